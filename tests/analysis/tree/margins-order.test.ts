import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { byLevel } from '../../../analysis/tree/levels.ts';
import { makeMargins, type MarginQuestion } from '../../../analysis/tree/make-margins.ts';
import {
  LOSSES,
  marginIndex,
  MARGINS_A_WINTER,
  type Loss,
  type TreeInWinter,
} from '../../../analysis/tree/winter-margins.ts';
import { anyQuestion, anyStates, STATIONS, TREES } from './margin-questions.ts';

const WOODY: readonly Loss[] = ['leaf', 'wood', 'kill'];
const runs = { numRuns: 40 };

function made(q: MarginQuestion, seed: number): Int16Array {
  const { nights, winters } = STATIONS[q.hemisphere];
  return makeMargins(nights, winters, anyStates(nights, seed), q).margins;
}

/** No margin of `a` is above the one of `b` at the same winter and loss. */
function expectNoLarger(
  [a, treeA]: readonly [Int16Array, TreeInWinter],
  [b, treeB]: readonly [Int16Array, TreeInWinter],
  losses: readonly Loss[] = LOSSES,
): void {
  const larger: string[] = [];
  for (const loss of losses) {
    const [atA, atB] = [treeA, treeB].map((tree) => marginIndex(0, tree) + LOSSES.indexOf(loss));
    for (let block = 0; block < a.length; block += MARGINS_A_WINTER) {
      if (a[block + atA] > b[block + atB]) larger.push(`${loss}: ${a[block + atA]} > ${b[block + atB]}`);
    }
  }
  expect(larger).toEqual([]);
}

describe('order of margins', () => {
  it('younger is never safer, hardening night by night never safer than hardened, bearing never safer than not', () => {
    fc.assert(
      fc.property(anyQuestion, fc.integer(), (q, seed) => {
        const margins = made(q, seed);
        for (const tree of TREES) {
          if (tree.ageClass > 0) {
            expectNoLarger([margins, tree], [margins, { ...tree, ageClass: tree.ageClass - 1 }]);
          }
          expectNoLarger([margins, { ...tree, reading: 'hardened' }], [margins, tree]);
          expectNoLarger([margins, { ...tree, bearing: false }], [margins, tree]);
        }
      }),
      runs,
    );
  });

  it('a weaker tree, a pot or a tenderer rootstock is never safer', () => {
    fc.assert(
      fc.property(anyQuestion, fc.integer(), (q, seed) => {
        const as = (tree: Partial<MarginQuestion['tree']>) =>
          made({ ...q, tree: { ...q.tree, ...tree } }, seed);
        const rows = [
          (['vigorous', 'average', 'weak'] as const).map((condition) => as({ condition })),
          [false, true].map((container) => as({ container })),
          (['trifoliate', 'sour-orange', 'rough-lemon'] as const).map((rootstock) => as({ rootstock })),
        ];
        for (const tree of TREES) {
          for (const row of rows) {
            for (let i = 1; i < row.length; i++) expectNoLarger([row[i - 1], tree], [row[i], tree]);
          }
        }
      }),
      { numRuns: 15 },
    );
  });

  it('fruit and flush do not look at the tree', () => {
    fc.assert(
      fc.property(anyQuestion, fc.integer(), (q, seed) => {
        const margins = made(q, seed);
        const weak = made(
          { ...q, tree: { condition: 'weak', container: true, rootstock: 'rough-lemon' } },
          seed,
        );
        const first: TreeInWinter = { reading: 'night_by_night', ageClass: 0, bearing: true };
        for (const tree of TREES) {
          const losses: Loss[] = tree.bearing ? ['fruit', 'flush'] : ['flush'];
          expectNoLarger([margins, first], [weak, tree], losses);
          expectNoLarger([weak, tree], [margins, first], losses);
        }
      }),
      runs,
    );
  });

  it('a larger gain never raises a margin', () => {
    const more = fc.record({
      calmC: fc.double({ min: 0, max: 3, noNaN: true }),
      windyC: fc.double({ min: 0, max: 3, noNaN: true }),
    });
    fc.assert(
      fc.property(anyQuestion, more, fc.integer(), (q, { calmC, windyC }, seed) => {
        const warmer = byLevel((level) => ({
          calmC: q.gains[level].calmC + calmC,
          windyC: q.gains[level].windyC + windyC,
        }));
        const before = made(q, seed);
        const after = made({ ...q, gains: warmer }, seed);
        for (const tree of TREES) expectNoLarger([after, tree], [before, tree]);
      }),
      runs,
    );
  });

  it('more hardening never raises a margin', () => {
    fc.assert(
      fc.property(
        anyQuestion,
        fc.integer(),
        fc.double({ min: 0, max: 0.5, noNaN: true }),
        (q, seed, more) => {
          const { nights, winters } = STATIONS[q.hemisphere];
          const state = anyStates(nights, seed);
          const hardening = state.hardening.map((value) => Math.min(1, value + more));
          const before = makeMargins(nights, winters, state, q).margins;
          const after = makeMargins(nights, winters, { ...state, hardening }, q).margins;
          for (const tree of TREES) expectNoLarger([after, tree], [before, tree], WOODY);
        },
      ),
      runs,
    );
  });

  it('fruit picked sooner never loses more', () => {
    fc.assert(
      fc.property(anyQuestion, fc.integer({ min: 0, max: 364 }), fc.integer(), (q, until, seed) => {
        const [sooner, later, always] = [until, until + 1, null].map((hangsUntil) =>
          made({ ...q, hangsUntil }, seed),
        );
        for (const tree of TREES) {
          expectNoLarger([sooner, tree], [later, tree]);
          expectNoLarger([later, tree], [always, tree]);
        }
      }),
      runs,
    );
  });
});
