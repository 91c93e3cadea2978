import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { yardProblems } from '../../../analysis/spot/check-yard.ts';
import { READY_YARDS } from '../../../analysis/spot/ready-yards.ts';
import { readYardFile, yardFileText } from '../../../analysis/spot/yard-file.ts';
import { InputError } from '../../../analysis/records/input-error.ts';
import { anyYard } from './any-yard.ts';

const LOT = READY_YARDS[0]!.yard;

/** The town lot's file with one change. */
function changed(
  change: (yard: Record<string, unknown> & { things: Record<string, unknown>[] }) => void,
): string {
  const value = JSON.parse(yardFileText(LOT));
  change(value);
  return JSON.stringify(value);
}

function sentence(text: string): string {
  try {
    readYardFile(text, 'plan.json');
  } catch (error) {
    expect(error).toBeInstanceOf(InputError);
    return (error as Error).message;
  }
  throw new Error('was read');
}

test('any yard comes back from its file as it was', () => {
  fc.assert(
    fc.property(anyYard, (yard) => {
      expect(yardProblems(yard)).toEqual([]);
      expect(readYardFile(yardFileText(yard), 'x.json')).toEqual(yard);
    }),
    { numRuns: 60 },
  );
});

test.each(READY_YARDS)(
  'ready yard $id can be reckoned with, comes back, and is marked invented',
  ({ yard, about }) => {
    expect(yardProblems(yard)).toEqual([]);
    expect(readYardFile(`\uFEFF${yardFileText(yard)}`, 'x.json')).toEqual(yard);
    expect(yard.name).toMatch(/invented/);
    expect(about).toMatch(/^Invented/);
    expect([yard.widthM >= 30, yard.widthM <= 40, yard.depthM >= 20, yard.depthM <= 30]).not.toContain(false);
  },
);

test('what may be left out is empty', () => {
  const { schema, name, widthM, depthM, coldWindFromDeg } = JSON.parse(yardFileText(LOT));
  const yard = readYardFile(
    JSON.stringify({ schema, name, widthM, depthM, coldWindFromDeg, things: [] }),
    'x',
  );
  expect(yard).toEqual({
    ...{ name, widthM, depthM, coldWindFromDeg, things: [] },
    ...{ spots: [], slope: null, bigWater: null, own: {} },
  });
});

describe('files that are refused name file, thing, value and limit', () => {
  test.each<[string, string]>([
    ['', 'plan.json: this is not a yard: the text is not JSON.'],
    ['null', 'plan.json: this yard file has no schema number; schema 1 is what can be read.'],
    ['[1]', 'plan.json: this yard file has no schema number; schema 1 is what can be read.'],
    ['{"schema":2}', 'plan.json: this yard file has schema 2; schema 1 is what can be read.'],
    ['{"schema":1}', 'plan.json: The yard: name is missing; a text is needed.'],
    [changed((yard) => (yard.widthM = '30')), 'plan.json: The yard: widthM is "30"; a number is needed.'],
    [
      changed((yard) => (yard.widthM = 10_000)),
      'plan.json: The plot has a width of 10000 m; at most 200 m is possible.',
    ],
    [changed((yard) => (yard.colour = 1)), 'plan.json: The yard has a field "colour"; known are '],
    [changed((yard) => (yard.things[0] = 7 as never)), 'plan.json: Thing 1 is 7; an object is needed.'],
    [
      changed((yard) => (yard.things[0]!.kind = 'tower')),
      'plan.json: Thing 1: kind is "tower"; one of building, ',
    ],
    [
      changed((yard) => (yard.things[0]!.radiusM = 2)),
      'plan.json: The building "house" has a field "radiusM"; ',
    ],
    [
      changed((yard) => (yard.things[0]!.heated = 'yes')),
      'The building "house": heated is "yes"; true or false is',
    ],
    [
      changed((yard) => (yard.things[0]!.outline = [[1, 2], [3]])),
      'plan.json: The building "house": corner 2 of outline is a list; a pair of numbers [east, north] is needed.',
    ],
    [
      changed((yard) => (yard.things[0]!.outline = Array(41).fill([1, 2]))),
      'plan.json: The building "house": outline holds 41; at most 40 are possible.',
    ],
    [
      changed((yard) => (yard.own = { magic: {} })),
      'plan.json: The degrees of your own has a field "magic"; ',
    ],
    [
      changed((yard) => (yard.slope = { towardsDeg: 1, percent: 2 })),
      'plan.json: The slope: position is missing; one',
    ],
    [
      `{"schema":1,"name":${'['.repeat(1e5)}${']'.repeat(1e5)}}`,
      'plan.json: The yard: name is a list; a text is',
    ],
  ])('%#: $1', (text, expected) => {
    expect(sentence(text)).toContain(expected);
  });
});

test('nothing that JSON can say ends in anything but a yard or one sentence', () => {
  const piece = fc.oneof(fc.jsonValue(), fc.constant(null), fc.double(), fc.string());
  const fields = Object.keys(LOT);
  const tampered = fc
    .tuple(anyYard, fc.constantFrom(...fields), piece, fc.nat(5), fc.string())
    .map(([yard, field, value, at, name]) => {
      const copy = JSON.parse(yardFileText(yard));
      if (copy.things[at] !== undefined) copy.things[at][Object.keys(copy.things[at])[at] ?? name] = value;
      else copy[field] = value;
      return JSON.stringify(copy);
    });
  fc.assert(
    fc.property(fc.oneof(tampered, fc.json(), fc.string()), (text) => {
      try {
        expect(yardProblems(readYardFile(text, 'x.json'))).toEqual([]);
      } catch (error) {
        expect(error).toBeInstanceOf(InputError);
        expect((error as Error).message).toMatch(/^x\.json: [^\n]*\.$/);
      }
    }),
    { numRuns: 300 },
  );
});
