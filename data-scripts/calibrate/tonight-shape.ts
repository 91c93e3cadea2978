import { sustainedTonightC } from '../../analysis/cover/night-shape.ts';
import { nightsFromHourly } from '../../analysis/night/nights-from-hourly.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import { MISSING_HUNDREDTHS, SUSTAINED_HOURS } from '../../analysis/records/nights.ts';
import { celsiusDifferenceToFahrenheit } from '../../analysis/units/temperature.ts';
import { readAirports } from './read-airports.ts';

const USAGE = 'usage: tonight-shape HOURLY_FOLDER';

/** A night below freezing: what a forecast would say of it if it were right, and what was held, °C. */
interface FrostNight {
  readonly place: string;
  readonly minimumC: number;
  readonly hoursBelowFreezing: number;
  /** S_h by {@link JUDGED_HOURS}; NaN where the frost was shorter. */
  readonly heldC: readonly number[];
}

const JUDGED_HOURS = [2, 4, 6, 8, 12] as const;
const SHAPES = Array.from({ length: 41 }, (_, i) => 0.8 + i * 0.03);
/** A place with fewer nights has no say of its own. */
const FEWEST_NIGHTS = 50;

/** Hours at or below freezing, between the kept durations; `null` where the night wasn't below, or all day. */
function frostHours(levelsC: readonly number[]): number | null {
  const j = levelsC.findIndex((level) => level > 0);
  if (j < 1) return null;
  const [before, after] = [SUSTAINED_HOURS[j - 1], SUSTAINED_HOURS[j]];
  return before - (levelsC[j - 1] / (levelsC[j] - levelsC[j - 1])) * (after - before);
}

async function frostNights(folder: string): Promise<FrostNight[]> {
  const records = await readAirports(folder);
  return records.flatMap(({ airport: { place }, series }) => {
    const { count, sustained } = nightsFromHourly(series);
    return Array.from({ length: count }, (_, i) => sustained.map((column) => column[i])).flatMap((stored) => {
      if (stored.includes(MISSING_HUNDREDTHS)) return [];
      const levelsC = stored.map((value) => value / 100);
      const hours = frostHours(levelsC);
      if (hours === null) return [];
      const heldC = JUDGED_HOURS.map((h) => (h <= hours ? levelsC[SUSTAINED_HOURS.indexOf(h)] : NaN));
      return [{ place, minimumC: levelsC[0], hoursBelowFreezing: hours, heldC }];
    });
  });
}

/** Errors in °F of every duration of every night, told less held. */
function errorsF(nights: readonly FrostNight[], shape?: number): number[][] {
  return JUDGED_HOURS.map((h, j) =>
    nights
      .filter(({ heldC }) => !Number.isNaN(heldC[j]))
      .map((night) => celsiusDifferenceToFahrenheit(sustainedTonightC(night, h, shape) - night.heldC[j])),
  );
}

const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
const absolute = (errors: readonly number[]): number => mean(errors.map(Math.abs));

/** The shape with the least mean of the durations' mean absolute errors. */
function bestShape(nights: readonly FrostNight[]): number {
  const cost = (shape: number): number => mean(errorsF(nights, shape).map(absolute));
  return SHAPES.reduce((best, shape) => (cost(shape) < cost(best) ? shape : best));
}

function tell(name: string, nights: readonly FrostNight[], shape?: number): void {
  const errors = errorsF(nights, shape);
  const all = errors
    .flat()
    .map(Math.abs)
    .sort((a, b) => a - b);
  const cells = errors.map((of) =>
    of.length === 0 ? '–' : `${absolute(of).toFixed(2)} (${mean(of).toFixed(2)})`,
  );
  const ninth = all[Math.floor(0.9 * all.length)].toFixed(2);
  console.log([name, nights.length, shape?.toFixed(2) ?? 'kept', ...cells, ninth].join('\t'));
}

/**
 * Judges the shape of {@link sustainedTonightC} on nights of airports that had no part in choosing it: each place by the
 * shape that is best on all others, and by the one that is kept.
 */
async function judgeShape(folder: string): Promise<void> {
  const nights = await frostNights(folder);
  const places = [...new Set(nights.map(({ place }) => place))].filter(
    (place) => nights.filter((night) => night.place === place).length >= FEWEST_NIGHTS,
  );
  const judged = nights.filter(({ place }) => places.includes(place));
  console.log(
    ['left out', 'nights', 'shape', ...JUDGED_HOURS.map((h) => `${h} h (mean)`), '9 in 10 within'].join('\t'),
  );
  for (const place of places) {
    const own = judged.filter((night) => night.place === place);
    tell(place, own, bestShape(judged.filter((night) => night.place !== place)));
  }
  tell('all, by the shape kept', judged);
  tell('all, by the best shape', judged, bestShape(judged));
}

const [folder] = process.argv.slice(2);
if (folder === undefined) {
  console.error(USAGE);
  process.exitCode = 2;
} else {
  await judgeShape(folder).catch((error: unknown) => {
    if (!(error instanceof InputError)) throw error;
    console.error(error.message);
    process.exitCode = 1;
  });
}
