/** What is said in another language, by its English form with `{0}`, `{1}` ... where values stand. */
export type Phrases = ReadonlyMap<string, string>;

/** How English is written: what everything is written in. */
export const ENGLISH = 'en-US';

let phrases: Phrases | null = null;
let locale = ENGLISH;
const keys = new WeakMap<TemplateStringsArray, string>();

/**
 * Chooses what {@link t} and {@link said} speak, and how figures and dates are written (a BCP 47 tag, `es-AR`): `null` is
 * English, the language everything is written in. To be called once, before anything is said; what was said earlier stays as
 * it was.
 */
export function speak(chosen: Phrases | null, written = ENGLISH): void {
  phrases = chosen;
  locale = written;
}

/** The phrases chosen, `null` for English: for a worker, which must be told anew. */
export function spokenPhrases(): Phrases | null {
  return phrases;
}

/** How figures and dates are written, a BCP 47 tag. */
export function spokenLocale(): string {
  return locale;
}

/**
 * A sentence or a word for people, in the language chosen; English where the catalogue lacks it. Values are put in as
 * they are, so a value that is a word must itself have been through `t`.
 *
 * @example t`Kept ${formatBytes(bytes)} on this device`
 */
export function t(english: TemplateStringsArray, ...values: readonly (string | number)[]): string {
  const phrase = phrases?.get(keyOf(english));
  if (phrase !== undefined)
    return phrase.replace(/\{(\d+)\}/g, (_, at: string) => String(values[Number(at)]));
  return english.reduce((text, piece, at) => text + String(values[at - 1]) + piece);
}

/** A text that comes from data (a type's name, the title of a measure), in the language chosen. */
export function said(english: string): string {
  return phrases?.get(english) ?? english;
}

/** What a phrase is called in a catalogue: its pieces with `{0}`, `{1}` ... between them. */
export function phraseKey(pieces: readonly string[]): string {
  return pieces.reduce((text, piece, at) => `${text}{${at - 1}}${piece}`);
}

function keyOf(english: TemplateStringsArray): string {
  let key = keys.get(english);
  if (key === undefined) {
    key = phraseKey(english);
    keys.set(english, key);
  }
  return key;
}
