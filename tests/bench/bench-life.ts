import { choose } from '../../analysis/answer/choose.ts';
import { answerLife, answerLifeWithoutRanges } from '../../analysis/answer/life-answer.ts';
import { lifePlace } from '../../analysis/answer/life-place.ts';
import { offersAt } from '../../analysis/answer/offers.ts';
import { IN_THE_OPEN } from '../../analysis/answer/standing-spot.ts';
import { answerYear } from '../../analysis/answer/year-answer.ts';
import { lastOf } from '../../analysis/math/steps.ts';
import { nightsFromDaily } from '../../analysis/night/nights-from-daily.ts';
import { CITRUS_TYPES } from '../../analysis/tree/catalogue.ts';
import { NO_LEVEL_GAIN_SPREADS } from '../../analysis/tree/level-gains.ts';
import { MATURE_TREE } from '../../analysis/tree/penalties.ts';
import { summariseWinters } from '../../analysis/winter/summarise-winters.ts';
import { keptOf } from '../analysis/tree/made-nights.ts';
import { medianMs, type BenchRow } from './bench-row.ts';
import { inventedSeries } from './invented-record.ts';

/** From the nights of 60 winters to the life of trees, the year and the choice of a type. */
export async function benchLife(): Promise<BenchRow[]> {
  const table = nightsFromDaily(inventedSeries(60, 1));
  const nights = keptOf(table, 'north');
  const subject = {
    place: { label: 'Invented', lat: 31, lon: -42, elevation_m: 5, basis: 'station' as const },
    winters: summariseWinters(table, 'north'),
    neighbours: [],
    evidence: [],
    notes: [],
  };
  const planting = { startAgeYears: 1, picking: 'late', calendar: 'gulf' } as const;
  const question = {
    types: CITRUS_TYPES,
    tree: MATURE_TREE,
    gains: NO_LEVEL_GAIN_SPREADS,
    spotGains: NO_LEVEL_GAIN_SPREADS,
    nightWork: false,
    planting,
  };
  const wishes = {
    kinds: ['eating', 'cooking'] as const,
    nightsToCover: 6,
    lostCropsInTen: 3,
    yearsToWait: 4,
    livingInTen: 7,
  };
  const page = { spotId: null, covers: [], container: false };
  const place = () => lifePlace(subject, nights, planting);
  const livesMs = await medianMs(() => answerLifeWithoutRanges(place(), question), 15);
  const rangesMs = await medianMs(() => lastOf(answerLife(place(), question)));
  const yearMs = await medianMs(() => answerYear(subject, nights, { ...question, calendar: 'gulf' }));
  const chooseMs = await medianMs(() =>
    choose(
      { types: CITRUS_TYPES, wishes, page, hemisphere: 'north' },
      offersAt(place(), { tree: MATURE_TREE, planting, spot: IN_THE_OPEN }),
    ),
  );
  const kept = `${nights.day.length} nights`;
  const row = { unit: 'ms', ratio: null };
  return [
    {
      ...row,
      task: `life of 37 types planted in 60 winters, both readings, ${kept}`,
      measured: livesMs,
      budget: { value: 100, most: true },
      note: 'hardening of each night, margins, courses, crops and Kaplan-Meier; one thread',
    },
    {
      ...row,
      task: 'the same with ranges of 200 orders of the winters',
      measured: rangesMs,
      budget: { value: 1000, most: true },
      note: 'in a worker, with progress',
    },
    {
      ...row,
      task: 'the year: dates of 37 types x 4 levels with ranges, harvest, tasks',
      measured: yearMs,
      budget: null,
      note: '1,000 draws of winters',
    },
    {
      ...row,
      task: 'which to plant of 34 types, with covers and spots tried',
      measured: chooseMs,
      budget: null,
      note: 'in a worker, with progress',
    },
  ];
}
