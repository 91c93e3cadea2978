import { describe, expect, it } from 'vitest';

import { readAddress, writeAddress } from '../../../web/state/address.ts';
import {
  readSheetText,
  SHEET_TYPES_MAX,
  usualPaper,
  withType,
  writeSheetText,
} from '../../../web/state/sheet-text.ts';

describe('what goes on the sheet, as text', () => {
  it('comes back as it was written, also through an address', () => {
    const choice = { types: ['meyer_lemon', 'satsuma_owari'], paper: 'letter' } as const;
    const sheet = writeSheetText(choice)!;
    expect(readSheetText(readAddress(writeAddress({ sheet })).chosen.sheet!)).toEqual(choice);
  });

  it('is nothing while nothing was chosen', () => {
    expect(writeSheetText({ types: [], paper: null })).toBeUndefined();
    expect(readSheetText(null)).toEqual({ types: [], paper: null });
  });

  it('leaves out types and papers that are not known, repeats, and a fifth type', () => {
    expect(readSheetText('meyer_lemon,nothing,meyer_lemon.tabloid')).toEqual({
      types: ['meyer_lemon'],
      paper: null,
    });
    const five = 'meyer_lemon,satsuma_owari,eureka_lemon,kumquat_nagami,calamondin';
    expect(readSheetText(five).types).toEqual(five.split(',').slice(0, SHEET_TYPES_MAX));
    expect(withType(['a', 'b', 'c', 'd'], 'e', true)).toEqual(['a', 'b', 'c', 'd']);
    expect(withType(['a', 'b'], 'a', false)).toEqual(['b']);
  });

  it('takes the paper of the first language that names a country', () => {
    expect(usualPaper(['en-US', 'de-DE'])).toBe('letter');
    expect(usualPaper(['en', 'es-MX'])).toBe('letter');
    expect(usualPaper(['es-ES', 'en-US'])).toBe('a4');
    expect(usualPaper(['zh-Hans-TW'])).toBe('a4');
    expect(usualPaper(['en'])).toBe('a4');
  });
});
