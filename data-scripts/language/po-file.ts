import { po } from 'gettext-parser';

/** A phrase as a catalogue holds it. */
export interface Entry {
  /** The English key, with `{0}` where values stand. */
  readonly english: string;
  /** `''` where it is not translated yet. */
  readonly translation: string;
  /** Sources that say it, without lines. */
  readonly sources: readonly string[];
  /** What a translator wrote beside it. */
  readonly note?: string;
}

/** The entries of a catalogue file in their order; a translation marked fuzzy counts as missing. */
export function parsePo(text: string): Entry[] {
  const messages = Object.values(po.parse(text).translations[''] ?? {}).filter(({ msgid }) => msgid !== '');
  return messages.map(({ msgid, msgstr, comments }) => ({
    english: msgid,
    translation: comments?.flag?.includes('fuzzy') ? '' : msgstr[0],
    sources: comments?.reference?.split('\n') ?? [],
    ...(comments?.translator ? { note: comments.translator } : {}),
  }));
}

/** A catalogue file with these entries in this order, one line a phrase so that changes read well. */
export function writePo(language: string, entries: readonly Entry[]): string {
  const messages = entries.map(({ english, translation, sources, note }) => [
    english,
    {
      msgid: english,
      msgstr: [translation],
      comments: { reference: sources.join('\n'), ...(note ? { translator: note } : {}) },
    },
  ]);
  const catalogue = {
    charset: 'utf-8',
    headers: {
      Language: language,
      'Content-Type': 'text/plain; charset=utf-8',
      'Content-Transfer-Encoding': '8bit',
    },
    translations: { '': Object.fromEntries(messages) },
  };
  return `${new TextDecoder().decode(po.compile(catalogue, { foldLength: 0 })).trimEnd()}\n`;
}
