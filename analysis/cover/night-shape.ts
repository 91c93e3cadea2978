import { sayFigureText } from '../language/figures.ts';
import { t } from '../language/t.ts';
import { InputError } from '../records/input-error.ts';

/** What a forecast says of the night. */
export interface NightForecast {
  /** Lowest temperature, °C. */
  readonly minimumC: number;
  /** Unbroken hours at or below freezing, 0 when the minimum is above it. */
  readonly hoursBelowFreezing: number;
}

/** Fitted by eye between 1 (straight sides) and 2 (a bowl) for least error at 2 to 12 hours; see {@link sustainedTonightC}. */
const SHAPE = 1.2;
/** Hours longer than this many times the frost are judged as if they were so long: beyond, the curve would rise too warm. */
const LONGEST_IN_FROSTS = 2;
/** A forecast outside these is a slip of the pen: °C and hours. */
const FORECAST_MIN_C = -40;
const FORECAST_MAX_C = 20;
const FORECAST_MAX_HOURS = 96;

/** Nine nights in ten are told within this, °C (1.7 °F); see {@link sustainedTonightC}. */
export const NINE_IN_TEN_WITHIN_C = 0.94;

/**
 * Sustained cold `S_h` of a night of which only the minimum m and the hours H below freezing are forecast, °C:
 * `S_h = m (1 - (h/H)^1.2)`: the minimum at h = 0, freezing at h = H, above freezing for longer, held from h = 2 H on. A night
 * without frost keeps its minimum for all hours. Both are on the cold side.
 *
 * Checked on 1,954 nights below freezing of four airports with hourly readings (Nashville 2003-12 and 2014-23, Columbia
 * 2013-22, Dallas Fort Worth 2012-21, Reno 2013-22), true m and H given, h up to H: mean absolute error 0.6, 0.7, 0.7, 0.8,
 * 0.6 °F at 2, 4, 6, 8, 12 hours, bias -0.3, -0.1, +0.1, +0.2, +0.3 °F, nine nights in ten within 1.7 °F; from H to 2 H 0.9 to
 * 1.7 °F with a bias of 0 to -1.0. The forecast's own error comes on top. Each of six places left out in turn and judged by the
 * exponent best on the others (1.22 to 1.28): 0.4 to 0.9 °F, no worse (data-scripts/calibrate/tonight-shape.ts).
 *
 * @param shape the exponent; another one only to judge it
 */
export function sustainedTonightC(
  { minimumC, hoursBelowFreezing }: NightForecast,
  hours: number,
  shape = SHAPE,
): number {
  if (minimumC > 0 || hoursBelowFreezing === 0) return minimumC;
  const frosts = Math.min(hours / hoursBelowFreezing, LONGEST_IN_FROSTS);
  return minimumC * (1 - frosts ** shape);
}

/** @throws InputError for a forecast that can't be */
export function checkForecast({ minimumC, hoursBelowFreezing }: NightForecast): void {
  if (!(minimumC >= FORECAST_MIN_C && minimumC <= FORECAST_MAX_C))
    throw new InputError(
      t`The forecast minimum must lie between -40 and 68 °F (-40 and 20 °C), not ${sayFigureText(String(minimumC))} °C.`,
    );
  if (!(hoursBelowFreezing >= 0 && hoursBelowFreezing <= FORECAST_MAX_HOURS))
    throw new InputError(
      t`The hours below freezing must lie between 0 and ${FORECAST_MAX_HOURS}, not ${sayFigureText(String(hoursBelowFreezing))}.`,
    );
  if (minimumC > 0 && hoursBelowFreezing > 0)
    throw new InputError(
      t`With a minimum above freezing there are no hours below it, but ${sayFigureText(String(hoursBelowFreezing))} were given.`,
    );
  if (minimumC < 0 && hoursBelowFreezing === 0)
    throw new InputError(t`With a minimum below freezing the hours below freezing must be more than 0.`);
}
