import { t } from '../../analysis/language/t.ts';
import { InputError } from '../../analysis/records/input-error.ts';

/**
 * Looks at the beginning of what came for a station's record, so that a page which a network puts in its place (a sign-in)
 * is refused before it is kept.
 */
export function lookAtRecord(id: string, host: string): (start: Uint8Array) => void {
  return lookFor(new RegExp(`^"?(id|station|${id})"?,`, 'i'), t`the record of ${id}`, host);
}

/** The same for one of the archive's lists, whose lines begin with an id of eleven characters. */
export function lookAtList(name: string, host: string): (start: Uint8Array) => void {
  return lookFor(/^\w{11} /, name, host);
}

function lookFor(wanted: RegExp, name: string, host: string): (start: Uint8Array) => void {
  return (start) => {
    const text = new TextDecoder().decode(start).replace(/^\ufeff/, '');
    if (wanted.test(text)) return;
    const [first = ''] = text.trim().split('\n', 1);
    throw new InputError(
      t`What ${host} sent isn’t ${name}; it begins “${first.slice(0, 40)}”. A network that wants a sign-in first may have answered in its place.`,
    );
  };
}
