import { describe, expect, it } from 'vitest';
import { AdviceHere } from '../../../analysis/answer/advice-here.ts';
import { rankTypes } from '../../../analysis/answer/assess.ts';
import {
  batchAdvice,
  batchPeriod,
  BATCH_DRAWS,
  BATCH_LEVELS,
  type BatchAnswer,
} from '../../../analysis/answer/batch.ts';
import { BatchAnswers, batchQuestion } from '../../../analysis/answer/batch-answer.ts';
import { findSubject } from '../../../analysis/answer/find-subject.ts';
import { strictProtection } from '../../../analysis/answer/protection.ts';
import { IN_THE_OPEN } from '../../../analysis/answer/standing-spot.ts';
import { fitPlaceParameters } from '../../../analysis/place/fit-parameters.ts';
import type { CoverId } from '../../../analysis/cover/cover-ids.ts';
import { CITRUS_TYPES } from '../../../analysis/tree/catalogue.ts';
import { LEVELS } from '../../../analysis/tree/levels.ts';
import { MATURE_TREE } from '../../../analysis/tree/penalties.ts';
import { InventedLand } from '../place/invented-land.ts';
import { BARE_TEXTS } from './bare-texts.ts';
import { inventedSource } from './invented-source.ts';

const land = new InventedLand({ seed: 21, winters: 40, share: 0.8 });
const members = land.members(land.scattered(14, 60, 200));
const source = inventedSource(members, { place: fitPlaceParameters(members) });
const stations = source.stations.map(({ lat, lon, elevation_m }) => ({ lat, lon, elevationM: elevation_m }));
const between = [
  [3, 4, 80],
  [-20, 12, 5],
  [25, -30, 300],
  [-35, -8, 40],
].map(([x, y, height]) => {
  const { lat, lon } = land.site(x, y, height);
  return { lat, lon, elevationM: height };
});
const places = [...between, ...stations.slice(0, 3)];

const covers: CoverId[] = ['cloth-light', 'tied', 'soil-bank'];
const open = batchQuestion(CITRUS_TYPES, MATURE_TREE, strictProtection(BARE_TEXTS), []);
const covered = batchQuestion(
  CITRUS_TYPES,
  { ...MATURE_TREE, ageYears: 2 },
  strictProtection({ ...BARE_TEXTS, spot: 'heated-wall', cover: covers.join(',') }),
  covers,
);

describe('a row of a batch beside the full answer for the same place', () => {
  const off: number[] = [];
  it.each([
    ['in the open', open],
    ['young, at a wall and under a cover', covered],
  ])('has the same periods and bases %s, and ends of ranges within some percent', async (_, question) => {
    const answers = new BatchAnswers(source, question);
    for (const place of places) {
      const told = (await answers.answer(place)) as BatchAnswer;
      const { subject } = await findSubject(source, { by: 'point', label: '', ...place });
      const full = rankTypes(subject, { ...question, levels: LEVELS, years: 10 });
      expect(told).toMatchObject({
        basis: full.place.basis,
        winters: full.winters.used,
        first: full.winters.first,
        last: full.winters.last,
        errorC: full.place.error_c ?? 0,
      });
      full.types.forEach(({ levels }, type) => {
        for (const level of BATCH_LEVELS) {
          const { headline } = levels.find((one) => one.level === level)!;
          const row = batchPeriod(told, type, level);
          expect(row.basis === headline.basis || row.basis === 'beyond' || headline.basis === 'beyond').toBe(
            true,
          );
          if (headline.basis !== 'beyond') expect(row.period).toBe(headline.period);
          // Where one range has no rare end, the other's lies beyond what is claimed.
          if (row.high === null || headline.high === null)
            expect(row.high ?? headline.high ?? Infinity).toBeGreaterThan(2 * full.winters.used);
          off.push(Math.abs(Math.log(row.low / headline.low!)));
          if (row.basis === 'fitted' && headline.basis === 'fitted' && headline.high! < 2 * full.winters.used)
            off.push(Math.abs(Math.log(row.high! / headline.high!)));
        }
      });
    }
  });
  it(`differs by draws alone: ${BATCH_DRAWS} for 1,000`, async () => {
    const sorted = off.toSorted((a, b) => a - b);
    const at = (share: number) => sorted[Math.floor(share * (sorted.length - 1))];
    // Half of the ends within 4 %, nine in ten within 8 %; bounds far beyond the record move most.
    expect(sorted.length).toBeGreaterThan(2000);
    expect(at(0.5)).toBeLessThan(0.04);
    expect(at(0.9)).toBeLessThan(0.08);
    // By a factor of 1.59 at worst, as the page and the command's README tell.
    expect(at(1)).toBeLessThan(Math.log(1.6));
    const same = new BatchAnswers(source, { ...open, draws: 1000 });
    const told = (await same.answer(places[0])) as BatchAnswer;
    const { subject } = await findSubject(source, { by: 'point', label: '', ...places[0] });
    const full = rankTypes(subject, { ...open, levels: LEVELS, years: 10 });
    full.types.forEach(({ levels }, type) => {
      for (const level of BATCH_LEVELS)
        expect(batchPeriod(told, type, level)).toMatchObject(
          (({ period, low, high, basis }) => ({ period, low, high, basis }))(
            levels.find((one) => one.level === level)!.headline,
          ),
        );
    });
  });
  it.each([
    ['in the open', open, IN_THE_OPEN, []],
    ['in a pot', { ...open, tree: { ...MATURE_TREE, container: true } }, IN_THE_OPEN, []],
    [
      'young, at a wall',
      covered,
      strictProtection({ ...BARE_TEXTS, spot: 'heated-wall', cover: null }).spot,
      covers,
    ],
  ] as const)('has the class that the counter gives %s', async (_, question, spot, pageCovers) => {
    const answers = new BatchAnswers(source, question);
    const seen = new Set<string>();
    for (const place of places.slice(0, 5)) {
      const told = (await answers.answer(place)) as BatchAnswer;
      const { subject } = await findSubject(source, { by: 'point', label: '', ...place });
      const rows = new AdviceHere(subject, { page: spot, wall: spot }, BATCH_DRAWS).rows({
        rows: CITRUS_TYPES.map((type) => ({ key: type.id, type, ageYears: null })),
        tree: question.tree,
        pageCovers,
        hasSpot: spot !== IN_THE_OPEN,
        answers: {},
        nights: { page: null, wall: null },
      });
      const classes = CITRUS_TYPES.map((__, type) => batchAdvice(told, type));
      expect(classes).toEqual(rows.map(({ advice }) => advice));
      classes.forEach((one) => seen.add(String(one)));
    }
    expect(seen.size).toBeGreaterThan(1);
  });
});

describe('the covers that classes are looked for under', () => {
  it('are the strongest of the usual ones, and beside it the one chosen, which may do more', () => {
    const plansOf = (own: CoverId[]) =>
      batchQuestion(CITRUS_TYPES, MATURE_TREE, strictProtection(BARE_TEXTS), own).plans;
    expect(plansOf([])).toHaveLength(1);
    const own: CoverId[] = ['plastic-house'];
    const [, chosen] = plansOf(own);
    expect(chosen.gains).toEqual(strictProtection({ ...BARE_TEXTS, cover: own.join(',') }).gains);
  });
});

describe('answers of a batch', () => {
  it("don't depend on the order of the places, nor on who answers them", async () => {
    const one = new BatchAnswers(source, open);
    const forwards = [];
    for (const place of places) forwards.push(await one.answer(place));
    const other = new BatchAnswers(source, open);
    for (let i = places.length - 1; i >= 0; i--) expect(await other.answer(places[i])).toEqual(forwards[i]);
    expect(await new BatchAnswers(source, open).answer(places[2])).toEqual(forwards[2]);
  });
  it('are refusals where no station is near, and go on after them', async () => {
    const answers = new BatchAnswers(source, open);
    const far = await answers.answer({ lat: -10, lon: 100, elevationM: null });
    expect(far.problem).toMatch(/km from the nearest station/);
    expect((await answers.answer(places[0])).problem).toBeNull();
  });
});
