import { spokenPhrases, type Phrases } from '../../analysis/language/t.ts';

/** A phrase with values in it, as a text made from it looks. */
interface Shape {
  readonly pattern: RegExp;
  /** The longest piece between values: no text without it fits. */
  readonly longest: string;
  readonly translation: string;
  /** Length of what stands before the first value. */
  readonly lead: number;
}

interface Said {
  readonly text: string;
  /** Letters left as they were. */
  readonly unsaid: number;
  readonly lead: number;
}

/** Phrases of fewer letters fit too much: `{0} of {1}`. */
const FEWEST_LETTERS = 7;
const shapes = new WeakMap<Phrases, readonly Shape[]>();

/**
 * A text that was made in English and kept, a pack's note for instance, in the language of the page: the phrase is found that
 * it was made from, and its values are put into the translation, themselves said where they are texts. Of several that fit
 * the one that leaves least in English, then the one that says more before its first value; as it is where none fits.
 */
export function saidFilled(text: string): string {
  const phrases = spokenPhrases();
  return phrases ? sayKept(text, phrases).text : text;
}

function sayKept(text: string, phrases: Phrases): Said {
  const whole = phrases.get(text);
  if (whole !== undefined) return { text: whole, unsaid: 0, lead: 0 };
  let best: Said = { text, unsaid: lettersIn(text), lead: Infinity };
  for (const { pattern, longest, translation, lead } of shapesOf(phrases)) {
    if (!text.includes(longest)) continue;
    const values = pattern
      .exec(text)
      ?.slice(1)
      .map((value) => sayKept(value, phrases));
    const unsaid = values?.reduce((sum, value) => sum + value.unsaid, 0);
    if (!values || unsaid === undefined || unsaid > best.unsaid) continue;
    if (unsaid === best.unsaid && lead <= best.lead) continue;
    const filled = translation.replace(/\{(\d+)\}/g, (_, at: string) => values[Number(at)].text);
    best = { text: filled, unsaid, lead };
  }
  return best;
}

function lettersIn(text: string): number {
  return text.replace(/\P{L}/gu, '').length;
}

function shapesOf(phrases: Phrases): readonly Shape[] {
  let known = shapes.get(phrases);
  if (!known) shapes.set(phrases, (known = [...phrases].flatMap(shapeOf)));
  return known;
}

function shapeOf([english, translation]: readonly [string, string]): Shape[] {
  const pieces = english.split(/\{\d+\}/);
  if (pieces.length === 1 || lettersIn(pieces.join('')) < FEWEST_LETTERS) return [];
  const escaped = pieces.map((piece) => piece.replace(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`));
  return [
    {
      pattern: new RegExp(`^${escaped.join('(.+?)')}$`, 'su'),
      longest: pieces.reduce((most, piece) => (piece.length > most.length ? piece : most)),
      translation,
      lead: pieces[0].length,
    },
  ];
}
