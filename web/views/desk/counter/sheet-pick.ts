import { SHEET_TYPES_MAX } from '../../../state/sheet-text.ts';

/** Which types the counter puts on the sheet to take home. */
export interface SheetPick {
  /** Ids put on it so far. */
  readonly types: readonly string[];
  /** Age that the sheet tells of, years. */
  readonly ageYears: number;
  readonly onput: (typeId: string, on: boolean) => void;
}

/** No more fit on the page. */
export function isFull({ types }: SheetPick): boolean {
  return types.length >= SHEET_TYPES_MAX;
}
