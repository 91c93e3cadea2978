import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { InputError } from '../../../analysis/records/input-error.ts';
import { yardProblems } from '../../../analysis/spot/check-yard.ts';
import { READY_YARDS } from '../../../analysis/spot/ready-yards.ts';
import { readYardText, writeYardText } from '../../../analysis/spot/yard-text.ts';
import type { Yard } from '../../../analysis/spot/yard.ts';
import { anyYard } from './any-yard.ts';

/** Same shape, all numbers within `most` of each other, ids aside. */
function expectNear(got: unknown, wanted: unknown, most: number, path = 'yard'): void {
  if (typeof wanted === 'number') {
    expect(Math.abs((got as number) - wanted), path).toBeLessThanOrEqual(most);
  } else if (typeof wanted === 'object' && wanted !== null) {
    expect(Object.keys(got as object).sort(), path).toEqual(Object.keys(wanted).sort());
    for (const [name, value] of Object.entries(wanted)) {
      if (name !== 'id') expectNear((got as Record<string, unknown>)[name], value, most, `${path}.${name}`);
    }
  } else {
    expect(got, path).toBe(wanted);
  }
}

const round = (yard: Yard) => readYardText(writeYardText(yard));

test('any yard comes back to 0.1 m, names and degrees of one’s own with it', () => {
  fc.assert(
    fc.property(anyYard, (yard) => {
      const text = writeYardText(yard);
      expect(text).toMatch(/^[A-Za-z0-9._-]*$/);
      expect(encodeURIComponent(text)).toBe(text);
      expect(new URLSearchParams({ yard: text }).toString()).toBe(`yard=${text}`);
      const { bigWater, ...back } = readYardText(text);
      const { bigWater: water, ...wanted } = yard;
      expectNear(back, wanted, 0.0500001);
      expectNear(bigWater, water, 0.500001);
      for (const [id, own] of Object.entries(yard.own)) {
        expectNear(back.own[id as keyof Yard['own']], own, 0.0050001);
      }
    }),
    { numRuns: 100 },
  );
});

test('what was read once is written the same again', () => {
  fc.assert(
    fc.property(anyYard, (yard) => {
      const text = writeYardText(yard);
      expect(writeYardText(readYardText(text))).toBe(text);
    }),
  );
});

test.each(READY_YARDS)('ready yard $id, drawn on the grid of 0.05 m, comes back exactly', ({ yard }) => {
  expectNear(round(yard), yard, 1e-12);
});

test('a yard of ten things fits into 600 letters', () => {
  const { yard } = READY_YARDS[2]!;
  const ten = [...yard.things, { ...yard.things[3]!, id: 'oak-3' }, { ...yard.things[6]!, id: 'wall-9' }];
  const own = { 'warm-wall': { calmC: 2.5, windyC: 1 }, pond: { calmC: 0, windyC: 0 } };
  expect(ten).toHaveLength(10);
  expect(writeYardText({ ...yard, things: ten, own }).length).toBeLessThan(600);
});

test('a crown thinner than the grid keeps its underside below its top', () => {
  const { yard } = READY_YARDS[0]!;
  const oak = yard.things.find(({ kind }) => kind === 'canopy')!;
  const thin = { ...oak, baseM: 39.99, heightM: 40 } as typeof oak;
  expect(round({ ...yard, things: [thin] }).things[0]).toMatchObject({ baseM: 39.95, heightM: 40 });
});

describe('texts that are refused', () => {
  const text = writeYardText(READY_YARDS[0]!.yard);
  test.each([
    ['', 'does not begin with 1'],
    ['2abc', 'does not begin with 1'],
    ['1', "The beginning of the yard's text is cut short."],
    ['1KAHgz', 'cut short'],
    ['1KAHgz%', 'holds "%", which is not a letter'],
    ['1__HgzkA', 'The plot has a width of 204.75 m; at most 200 m is possible.'],
    [`${text}.`, 'a part "" of an unknown kind'],
    [`${text}.xABC`, 'a part "xABC" of an unknown kind'],
    [`${text}.pABC`, 'cut short'],
    [`${text}.pABCDABCD`, 'The paving 3 has 2 corners; at least 3 are needed.'],
    [`${text}.gzABCDABCDABCD`, 'holds choice 52; there are 3'],
    [`${text}.TABCDa-zzzzzz-`, 'stands for no letter'],
    [`${text}.TABCDa-`, 'stands for no letter'],
    [`${text}.SAAAAAA`, '1 letters too long'],
    [`1${'A'.repeat(40_000)}`, 'at most 40,000'],
  ])('%#: $1', (bad, expected) => {
    expect(() => readYardText(bad)).toThrow(InputError);
    expect(() => readYardText(bad)).toThrow(expected);
  });
});

test('the largest yard that can be drawn can be read again', () => {
  const { yard } = READY_YARDS[0]!;
  const circle = Array.from({ length: 40 }, (_, at): [number, number] => {
    const turn = (at * 2 * Math.PI) / 40;
    return [100 + 90 * Math.sin(turn), 100 + 90 * Math.cos(turn)];
  });
  const things = Array.from({ length: 60 }, (_, at) => ({
    ...{ kind: 'canopy' as const, id: `c-${at}`, outline: circle, baseM: 2, heightM: 9, density: 0.5 },
  }));
  const spots = Array.from({ length: 40 }, (_, at) => ({
    ...{ id: `s-${at}`, at: [1, 1] as const, name: `${'é'.repeat(56)}${at}` },
  }));
  const large = { ...yard, widthM: 200, depthM: 200, things, spots };
  expect(yardProblems(large)).toEqual([]);
  expect(round(large).things).toHaveLength(60);
});
