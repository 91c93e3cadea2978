import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { HARVEST_CALENDARS, PICKINGS } from '../../../analysis/tree/harvest.ts';
import { readAddress, writeAddress } from '../../../web/state/address.ts';
import {
  readPlantingText,
  START_AGE_MAX,
  usualPlanting,
  writePlantingText,
} from '../../../web/state/planting-text.ts';

const plantings = fc.record({
  startAgeYears: fc.integer({ min: 1, max: START_AGE_MAX }),
  picking: fc.constantFrom(...PICKINGS),
  calendar: fc.constantFrom(...HARVEST_CALENDARS),
});

describe('how a tree is planted, as text', () => {
  it('comes back as it was written, at any place, through an address too', () => {
    fc.assert(
      fc.property(plantings, fc.constantFrom(...HARVEST_CALENDARS), (planting, usual) => {
        const life = writePlantingText(planting, usual);
        expect(readPlantingText(life ?? null, usual)).toEqual({ planting, problem: null });
        const { chosen, ignored } = readAddress(writeAddress(life === undefined ? {} : { life }));
        expect(ignored).toEqual([]);
        expect(readPlantingText(chosen.life ?? null, usual).planting).toEqual(planting);
      }),
    );
  });

  it('needs no text where nothing was chosen, and keeps the months chosen when the place changes', () => {
    expect(writePlantingText(usualPlanting('california'), 'california')).toBeUndefined();
    expect(writePlantingText(usualPlanting('gulf'), 'california')).toBe('1,late,gulf');
    expect(readPlantingText('3,early,gulf', 'california').planting).toEqual({
      startAgeYears: 3,
      picking: 'early',
      calendar: 'gulf',
    });
  });

  it.each([
    '',
    '0,late,gulf',
    '6,late,gulf',
    '1.5,late,gulf',
    ' 1,late,gulf',
    '1,late',
    '1,later,gulf',
    '1,late,gulf,x',
    '1,late,texas',
  ])('takes the usual planting for “%s” and says so', (text) => {
    const { planting, problem } = readPlantingText(text, 'gulf');
    expect(planting).toEqual(usualPlanting('gulf'));
    expect(problem).toContain(`“${text}”`);
    expect(problem).toContain('1 to 5');
  });

  it('shortens what it quotes', () => {
    expect(readPlantingText('x'.repeat(4000), 'gulf').problem!.length).toBeLessThan(250);
  });
});
