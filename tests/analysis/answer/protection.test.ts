import { describe, expect, it } from 'vitest';
import {
  readProtection,
  strictProtection,
  type ProtectionTexts,
} from '../../../analysis/answer/protection.ts';
import { readYardText, writeYardText } from '../../../analysis/spot/yard-text.ts';
import type { Yard } from '../../../analysis/spot/yard.ts';
import { celsiusDifferenceToFahrenheit } from '../../../analysis/units/temperature.ts';
import { BARE_TEXTS } from './bare-texts.ts';

const calmF = (texts: Partial<ProtectionTexts>, level: 'leaf' | 'kill' = 'leaf'): number =>
  celsiusDifferenceToFahrenheit(strictProtection({ ...BARE_TEXTS, ...texts }).gains[level].calm.centreC);
const windyF = (texts: Partial<ProtectionTexts>, level: 'leaf' | 'kill' = 'leaf'): number =>
  celsiusDifferenceToFahrenheit(strictProtection({ ...BARE_TEXTS, ...texts }).gains[level].windy.centreC);

/** A heated masonry house of 10 by 8 m in the middle of a plot of 30 by 30 m. */
const YARD: Yard = {
  name: 'Invented',
  widthM: 30,
  depthM: 30,
  things: [
    {
      kind: 'building',
      id: 'house',
      outline: [
        [10, 11],
        [20, 11],
        [20, 19],
        [10, 19],
      ],
      heightM: 5,
      heated: true,
      masonry: true,
    },
  ],
  spots: [{ id: 'warm', name: 'warm corner', at: [15, 10] }],
  slope: null,
  bigWater: null,
  coldWindFromDeg: 0,
  own: {},
};

describe('spot and cover together', () => {
  it('are nothing in the open without a cover', () => {
    const none = strictProtection(BARE_TEXTS);
    expect(none.words).toBe('');
    expect(none.gains.wood).toEqual({
      calm: { lowC: 0, centreC: 0, highC: 0 },
      windy: { lowC: 0, centreC: 0, highC: 0 },
    });
    expect(strictProtection({ ...BARE_TEXTS, spot: 'open' }).words).toBe('');
  });

  it('sum the rows of the tables: wall 3 to 6 °F, heavy cloth 6 to 8 °F, held to 10 °F (microsites 1, protection 2)', () => {
    expect(calmF({ spot: 'south-wall-heated' })).toBeCloseTo(4.5, 9);
    expect(calmF({ cover: 'cloth-heavy' })).toBeCloseTo(7, 9);
    expect(calmF({ spot: 'south-wall-heated', cover: 'cloth-heavy' })).toBeCloseTo(10, 9);
    expect(calmF({ spot: 'low-spot', cover: 'cloth-heavy' })).toBeCloseTo(7 - 5.5, 9);
  });

  it('are work at night where something is put on, not where soil is kept bare or banked up', () => {
    const nightWork = (cover: string | null): boolean => strictProtection({ ...BARE_TEXTS, cover }).nightWork;
    expect([null, 'bare-soil', 'soil-bank', 'bare-soil,soil-bank'].map(nightWork)).not.toContain(true);
    expect(['cloth-heavy', 'bare-soil,cloth-medium'].map(nightWork)).not.toContain(false);
  });

  it('gain nothing by an untied cover in wind', () => {
    expect(windyF({ cover: 'cloth-heavy' })).toBe(0);
    expect(windyF({ cover: 'cloth-heavy,tied' })).toBeCloseTo(2.5, 9);
    expect(windyF({ spot: 'crest', cover: 'cloth-heavy' })).toBeCloseTo(-1.5, 9);
  });

  it('save by a bank of soil the graft only, in a hollow too', () => {
    expect(calmF({ spot: 'low-spot', cover: 'soil-bank' }, 'leaf')).toBeCloseTo(-5.5, 9);
    expect(calmF({ spot: 'low-spot', cover: 'soil-bank' }, 'kill')).toBeGreaterThan(3);
  });

  it('count the same ground once', () => {
    const { gains, notes } = strictProtection({ ...BARE_TEXTS, spot: 'bare-ground', cover: 'bare-soil' });
    expect(celsiusDifferenceToFahrenheit(gains.leaf.calm.centreC)).toBeCloseTo(1, 9);
    expect(notes.join(' ')).toContain('counts in the spot already');
  });

  it('take a spot of the drawn yard, warmer by the sunny wall than behind the house, the other way round in the south', () => {
    const yard = writeYardText(YARD);
    const south = { spot: 'yard:15,10', yard };
    const north = { spot: 'yard:15,20', yard };
    expect(calmF(south)).toBeGreaterThan(calmF(north) + 0.5);
    expect(calmF({ ...north, hemisphere: 'south' })).toBeCloseTo(calmF(south), 6);
    expect(strictProtection({ ...BARE_TEXTS, ...south }).words).toContain(
      'warm corner in the yard “Invented”',
    );
    expect(readYardText(yard).spots[0].at).toEqual([15, 10]);
  });

  it('put a measured offset in the place of the table once it has nights enough', () => {
    const measured = 'c100_150_200_20';
    const { spot } = strictProtection({ ...BARE_TEXTS, spot: 'low-spot', measured });
    expect(spot.gain.calm).toEqual({ lowC: 1, centreC: 1.5, highC: 2 });
    expect(spot.gain.windy.centreC).toBe(0);
    const few = strictProtection({ ...BARE_TEXTS, spot: 'low-spot', measured: 'c100_150_200_3' }).spot.gain
      .calm;
    expect(few.centreC).toBeLessThan(1.5);
    expect(few.centreC).toBeGreaterThan(-3);
  });
});

describe('texts that make no sense', () => {
  it.each([
    [{ spot: 'nowhere' }, /no spot "nowhere"/],
    [{ spot: 'yard:3,4' }, /no yard came with it/],
    [{ spot: 'yard:31,4', yard: writeYardText(YARD) }, /outside the yard of 30 by 30 m/],
    [{ spot: 'yard:3,4', yard: '!' }, /yard/i],
    [{ measured: 'warm' }, /measured/],
    [{ cover: 'blanket' }, /no cover "blanket"/],
    [{ cover: 'lights' }, /ground-fault/],
    [{ cover: 'sheet,lights,lights-confirmed' }, /burns/],
    [{ cover: 'garage' }, /pot/],
  ] as const)('stop a command with a sentence: %j', (texts, sentence) => {
    expect(() => strictProtection({ ...BARE_TEXTS, ...texts })).toThrow(sentence);
  });

  it.each([{ spot: 'nowhere' }, { spot: 'yard:3,4' }, { measured: 'warm' }, { cover: 'blanket' }])(
    'leave an answer without that part and with a sentence in the page: %j',
    (texts) => {
      const { gains, problems } = readProtection({ ...BARE_TEXTS, ...texts });
      expect(problems).toHaveLength(1);
      expect(gains.leaf.calm.centreC).toBe(0);
    },
  );

  it('leave what is allowed beside what is refused', () => {
    const { gains, problems } = readProtection({ ...BARE_TEXTS, cover: 'cloth-light,lights,blanket' });
    expect(celsiusDifferenceToFahrenheit(gains.leaf.calm.centreC)).toBeCloseTo(3, 9);
    expect(problems[0]).toContain('Cover “blanket” is not known here');
    expect(problems[1]).toContain('ground-fault');
  });

  it('bring a tree in a pot into the garage', () => {
    expect(calmF({ cover: 'garage', container: true, spot: 'low-spot' })).toBeGreaterThan(8);
  });
});
