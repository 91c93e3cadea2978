import type { TonightForecast } from '../../../analysis/cover/tonight.ts';
import { sayFigureText } from '../../../analysis/language/figures.ts';
import { t } from '../../../analysis/language/t.ts';
import { figure, formatTemperature, temperatureIn, temperatureToC } from '../../format/temperatures.ts';
import type { TemperatureUnit } from '../../format/unit.ts';

/** What the reader typed, in the page's units: °F and mph, or °C and km/h. `null`: nothing, or no number. */
export interface TypedForecast {
  readonly minimum: number | null;
  readonly hours: number | null;
  readonly wind: number | null;
}

const MS_PER_MPH = 0.44704;
const KMH_PER_MS = 3.6;
const MINIMUM_C = { from: -40, to: 20 };
const HOURS_MAX = 96;
const WIND_MAX_MS = 60;

/** `mph` beside °F, `km/h` beside °C. */
export function windUnit(unit: TemperatureUnit): string {
  return unit === 'F' ? 'mph' : 'km/h';
}

/** Wind as typed, m/s. */
function windToMs(wind: number, unit: TemperatureUnit): number {
  return unit === 'F' ? wind * MS_PER_MPH : wind / KMH_PER_MS;
}

function windIn(windMs: number, unit: TemperatureUnit): number {
  return unit === 'F' ? windMs / MS_PER_MPH : windMs * KMH_PER_MS;
}

/** What was typed in one unit, written in the other: degrees to a tenth, wind to a whole figure. */
export function inOtherUnit(typed: TypedForecast, from: TemperatureUnit, to: TemperatureUnit): TypedForecast {
  const { minimum, wind } = typed;
  return {
    ...typed,
    minimum: minimum === null ? null : Number(temperatureIn(temperatureToC(minimum, from), to).toFixed(1)),
    wind: wind === null ? null : Math.round(windIn(windToMs(wind, from), to)),
  };
}

/** The forecast, or a sentence about what is missing or can't be; both `null` while nothing is typed. */
export function readForecast(
  { minimum, hours, wind }: TypedForecast,
  unit: TemperatureUnit,
): { readonly forecast: TonightForecast | null; readonly problem: string | null } {
  const not = (problem: string) => ({ forecast: null, problem });
  if (minimum === null) {
    return hours === null && wind === null
      ? { forecast: null, problem: null }
      : not(t`The lowest temperature of the forecast is missing.`);
  }
  const minimumC = temperatureToC(minimum, unit);
  if (!(minimumC >= MINIMUM_C.from && minimumC <= MINIMUM_C.to)) {
    const [from, to] = [MINIMUM_C.from, MINIMUM_C.to].map((end) => formatTemperature(end, unit, 0));
    return not(t`The lowest temperature must lie between ${from} and ${to}, not ${typedFigure(minimum)}.`);
  }
  const freezing = `${Math.round(temperatureIn(0, unit))} °${unit}`;
  const below = hours ?? (minimumC >= 0 ? 0 : null);
  if (below === null) return not(t`The hours below ${freezing} are missing.`);
  if (!(below >= 0 && below <= HOURS_MAX))
    return not(
      t`The hours below ${freezing} must lie between 0 and ${HOURS_MAX}, not ${typedFigure(below)}.`,
    );
  if (minimumC > 0 && below > 0)
    return not(
      t`With a lowest temperature above ${freezing} there are no hours below it, but ${typedFigure(below)} were given.`,
    );
  if (minimumC < 0 && below === 0)
    return not(t`With a lowest temperature below ${freezing} the hours below it must be more than 0.`);
  if (wind === null) return not(t`The wind of the coldest hours is missing.`);
  const windMs = windToMs(wind, unit);
  if (!(windMs >= 0 && windMs <= WIND_MAX_MS))
    return not(
      t`The wind must lie between 0 and ${Math.round(windIn(WIND_MAX_MS, unit))} ${windUnit(unit)}, not ${typedFigure(wind)}.`,
    );
  return { forecast: { minimumC, hoursBelowFreezing: below, wind: windMs }, problem: null };
}

/** The forecast as it is printed: `Forecast: lowest 24 °F, 7 h below 32 °F, wind 5 mph: a calm night.` */
export function forecastSentence(
  { minimum, hours, wind }: TypedForecast,
  kind: 'calm' | 'windy',
  unit: TemperatureUnit,
): string {
  const lowest = `${figure(minimum ?? 0, Number.isInteger(minimum) ? 0 : 1)} °${unit}`;
  const below = `${typedFigure(hours ?? 0)} h`;
  const freezing = `${unit === 'F' ? 32 : 0} °${unit}`;
  const blowing = `${typedFigure(wind ?? 0)} ${windUnit(unit)}`;
  return kind === 'calm'
    ? t`Lowest ${lowest}, ${below} below ${freezing}, wind ${blowing}: counted as a calm night.`
    : t`Lowest ${lowest}, ${below} below ${freezing}, wind ${blowing}: counted as a windy night.`;
}

/** A figure with the digits it was typed with. */
function typedFigure(value: number): string {
  return sayFigureText(String(value));
}
