import { t } from '../../../analysis/language/t.ts';
import type { PackManifest } from '../../../analysis/records/pack.ts';

/** Of the software; the build puts it in. */
const VERSION = String(import.meta.env.VITE_VERSION ?? '');

/** Whose records they are, under which licence, and what made the sheet. */
export function sheetSources({
  title,
  sources,
  files,
}: Pick<PackManifest, 'title' | 'sources' | 'files'>): readonly string[] {
  const whose = sources.map(({ name, licence, attribution }) => {
    const parts = [name, attribution, licence]
      .map((part) => part.replace(/\.$/, ''))
      .filter((part, i, all) => part !== '' && all.indexOf(part) === i);
    return parts.join(', ');
  });
  return [
    t`Records: ${whose.join('; ')}.`,
    files.some(({ path }) => path === 'grid.bin')
      ? t`Made by Citrus Winters ${VERSION} from the record pack “${title}”. Map: outlines and heights of the pack.`
      : t`Made by Citrus Winters ${VERSION} from the record pack “${title}”. Map: outlines of the pack.`,
  ];
}
