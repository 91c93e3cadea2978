import { typeName } from '../../analysis/tree/type-names.ts';

/** Types that one page holds. */
export const SHEET_TYPES_MAX = 4;

const PAPERS = ['a4', 'letter'] as const;
export type Paper = (typeof PAPERS)[number];

/** What goes on the sheet to take home. */
export interface SheetChoice {
  /** Ids of the catalogue in the order they are told, at most {@link SHEET_TYPES_MAX}; none: the type the page tells about. */
  readonly types: readonly string[];
  /** `null`: what is usual where the reader is. */
  readonly paper: Paper | null;
}

/** Reads `type,type.paper`; what isn't known is left out. */
export function readSheetText(text: string | null): SheetChoice {
  const [types = '', paper = ''] = (text ?? '').split('.');
  const known = types.split(',').filter((id) => typeName(id) !== undefined);
  return {
    types: [...new Set(known)].slice(0, SHEET_TYPES_MAX),
    paper: PAPERS.find((name) => name === paper) ?? null,
  };
}

/** The same as it is kept in the address, `undefined` where nothing was chosen. */
export function writeSheetText({ types, paper }: SheetChoice): string | undefined {
  if (types.length === 0 && paper === null) return undefined;
  return types.join(',') + (paper === null ? '' : `.${paper}`);
}

/** A type put on the sheet or taken off; a fifth is not taken. */
export function withType(types: readonly string[], id: string, on: boolean): readonly string[] {
  const others = types.filter((other) => other !== id);
  return on ? [...others, id].slice(0, SHEET_TYPES_MAX) : others;
}

/** Countries that print on Letter (CLDR, `paperSize` US-Letter); all others use A4. */
const LETTER = new Set('BZ CA CL CO CR GT MX NI PA PH PR SV US VE'.split(' '));

/** The paper that is usual for a reader's languages, by the first that names a country. */
export function usualPaper(languages: readonly string[]): Paper {
  const country = languages.map((language) => /-([A-Z]{2})(?:-|$)/.exec(language)?.[1]).find(Boolean);
  return country !== undefined && LETTER.has(country) ? 'letter' : 'a4';
}
