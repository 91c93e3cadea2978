import { sayFigure } from '../../language/figures.ts';
import { t } from '../../language/t.ts';
import type { PairedNight } from './paired-night.ts';
import { sayDifference } from './say.ts';
import type { ReadingUnit } from './spot-reading.ts';
import { theilSen, type RobustSlope } from './theil-sen.ts';

/** Fewer nights tell nothing of a drift. */
const NIGHTS_MIN = 8;
const DAYS_A_MONTH = 30;
/** A shorter span of days tells nothing of a drift with time. */
const DAYS_MIN = 30;
/** Slopes below these are not worth a word, °C a degree and °C a month. */
const WORTH_A_WORD = { perDegree: 0.05, perMonth: 0.2 };

/** Whether the offset changes with how cold the night is, or as time goes by. `null` with fewer than 8 nights. */
export interface Drift {
  /**
   * °C for each °C of the night's level, the mean of spot and station: against the station alone, chance errors of the
   * station would look like a slope of about -0.1 (found at pairs of stations).
   */
  readonly perDegree: RobustSlope | null;
  /** °C a month of 30 days; `null` too where the nights span less than that. */
  readonly perMonth: RobustSlope | null;
}

/** Slopes by Theil and Sen over the nights of one kind, with their 90 % intervals. */
export function driftOf(pairs: readonly PairedNight[]): Drift {
  if (pairs.length < NIGHTS_MIN) return { perDegree: null, perMonth: null };
  const differences = pairs.map(({ differenceC }) => differenceC);
  return {
    perDegree: theilSen(
      pairs.map(({ stationC, readingC }) => (stationC + readingC) / 2),
      differences,
    ),
    perMonth:
      pairs.at(-1)!.day - pairs[0]!.day < DAYS_MIN
        ? null
        : theilSen(
            pairs.map(({ day }) => day / DAYS_A_MONTH),
            differences,
          ),
  };
}

/** What a drift means, one sentence each; none where the interval holds 0 or the slope is slight. */
export function driftSentences({ perDegree, perMonth }: Drift, unit: ReadingUnit): string[] {
  const sentences: string[] = [];
  if (perDegree && isTold(perDegree, WORTH_A_WORD.perDegree)) {
    const each = sayFigure(Math.abs(perDegree.slope), 1);
    sentences.push(
      perDegree.slope < 0
        ? t`The colder the night, the milder the spot against the station: by about ${each} degrees for each degree. The offset is that of a middling night among those measured, so a killing night may find it milder still.`
        : t`The colder the night, the colder the spot against the station: by about ${each} degrees for each degree. The offset is that of a middling night among those measured, so a killing night may find it colder still.`,
    );
  }
  if (perMonth && isTold(perMonth, WORTH_A_WORD.perMonth)) {
    const change = sayDifference(perMonth.slope, unit);
    sentences.push(
      perMonth.slope > 0
        ? t`The difference to the station rises by about ${change} a month: look at the battery and at what has grown or been cleared round the thermometer.`
        : t`The difference to the station falls by about ${change} a month: look at the battery and at what has grown or been cleared round the thermometer.`,
    );
  }
  return sentences;
}

function isTold({ slope, low, high }: RobustSlope, least: number): boolean {
  return low * high > 0 && Math.abs(slope) >= least;
}
