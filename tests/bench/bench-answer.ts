import { assess, depthDurationOf, rankTypes } from '../../analysis/answer/assess.ts';
import { FitShelf } from '../../analysis/answer/fit-book.ts';
import { nightsFromDaily } from '../../analysis/night/nights-from-daily.ts';
import { CITRUS_TYPES } from '../../analysis/tree/catalogue.ts';
import { strictProtection } from '../../analysis/answer/protection.ts';
import { LEVELS } from '../../analysis/tree/levels.ts';
import { MATURE_TREE } from '../../analysis/tree/penalties.ts';
import { summariseWinters } from '../../analysis/winter/summarise-winters.ts';
import { NO_GAINS } from '../../analysis/winter/winter-minima.ts';
import { NO_LEVEL_GAIN_SPREADS } from '../../analysis/tree/level-gains.ts';
import { medianAfterMs, medianMs, type BenchRow } from './bench-row.ts';
import { inventedSeries } from './invented-record.ts';

/** From 60 winters to the ranking of all types, and nights with all sustained cold. */
export async function benchAnswer(): Promise<BenchRow[]> {
  const series = inventedSeries(60, 1);
  const nights = nightsFromDaily(series);
  const tables = [1, 2, 3, 4, 5].map((seed) =>
    summariseWinters(nightsFromDaily(inventedSeries(60, seed)), 'north'),
  );
  const subject = {
    place: { label: 'Invented', lat: 31, lon: -42, elevation_m: 5, basis: 'station' as const },
    winters: tables[0],
    neighbours: tables.slice(1),
    evidence: [],
    notes: [],
  };
  const request = {
    types: CITRUS_TYPES,
    levels: LEVELS,
    tree: MATURE_TREE,
    gains: NO_LEVEL_GAIN_SPREADS,
    years: 10,
  };
  const rankingMs = await medianMs(() => rankTypes(subject, request));
  const gains = strictProtection({
    ...{ spot: 'south-wall-heated', yard: null, measured: null, cover: 'cloth-light,tied,soil-bank' },
    ...({ hemisphere: 'north', container: false } as const),
  }).gains;
  const coveredMs = await medianMs(() => rankTypes(subject, { ...request, gains }));
  const curvesMs = await medianAfterMs(
    () => {
      const shelf = new FitShelf(subject);
      rankTypes(subject, request, shelf);
      return shelf.forGains(NO_GAINS);
    },
    (book) => depthDurationOf(subject, book),
  );
  const wholeMs = await medianMs(() => assess(subject, request));
  const nightsMs = await medianMs(() => nightsFromDaily(series));
  return [
    {
      task: 'full ranking: 37 types x 4 levels with ranges, 60 winters, 4 neighbours',
      measured: rankingMs,
      unit: 'ms',
      budget: { value: 150, most: true },
      ratio: null,
      note: 'what a click on the map waits for; one thread, nothing kept from before, 1,000 draws for each number of hours',
    },
    {
      task: 'the same on a spot and under a cover with a bank round the graft',
      measured: coveredMs,
      unit: 'ms',
      budget: { value: 150, most: true },
      ratio: null,
      note: 'fits for the gain in the air and at the graft, and for both ends of each',
    },
    {
      task: 'depth-duration curves after that ranking: 12 numbers of hours x 5 periods with ranges',
      measured: curvesMs,
      unit: 'ms',
      budget: null,
      ratio: null,
      note: 'fits of the seven numbers of hours that no threshold has, and all levels',
    },
    {
      task: 'ranking and curves in one, as the assess command does',
      measured: wholeMs,
      unit: 'ms',
      budget: null,
      ratio: null,
      note: '',
    },
    {
      task: 'daily extremes to nights with all sustained cold',
      measured: nights.count / nightsMs,
      unit: 'thousand nights/s',
      budget: { value: 500, most: false },
      ratio: null,
      note: `${nights.count} nights, one thread`,
    },
  ];
}
