import type { Assessment, LevelAnswer, TypeAnswer } from '../../analysis/answer/assessment.ts';
import { longestClaim } from '../../analysis/extremes/headline.ts';
import { csvLine } from '../../analysis/records/csv-text.ts';
import type { Level } from '../../analysis/tree/levels.ts';
import { alignColumns } from './align-columns.ts';
import { celsiusDifferenceToFahrenheit, celsiusToFahrenheit } from '../../analysis/units/temperature.ts';

/** Stands under every printed answer. */
const CAUTION =
  'A forecast or warning in force goes before any statistic here. A threshold is not a switch, a yard is not the station, ' +
  'kill figures are mostly inferred; ask the local extension office before planting.';

/**
 * The answer as a table for a terminal: one row a type, one column a level, range in brackets.
 * @param more lines between the table and the caution
 */
export function assessText(answer: Assessment, invented: boolean, more: readonly string[] = []): string {
  const { place, winters, types, notes } = answer;
  const at = `${place.lat.toFixed(3)}, ${place.lon.toFixed(3)}`;
  const height = place.elevation_m === null ? '' : `, ${Math.round(place.elevation_m)} m`;
  const span =
    winters.used === 0
      ? 'no complete winter'
      : `${winters.used} ${place.basis === 'history' ? 'estimated' : 'complete'} winters, ${winters.first} to ${winters.last}`;
  const levels = types[0]?.levels ?? [];
  const header = ['type', ...levels.map(({ level }) => level)];
  const rows = types.map((type) => [type.name, ...type.levels.map(levelCell)]);
  return [
    `${place.label} (${at}${height}): ${span}${invented ? '; invented region, invented readings' : ''}`,
    ...(place.error_c ? [levelError(place.error_c)] : []),
    ...standingLines(answer),
    ...notes,
    '',
    'About 1 winter in N would have taken (90 % range in brackets; kill as a band over the range of its threshold;',
    `winters hit${place.basis === 'history' ? ' as estimated' : ''} of winters in braces):`,
    '',
    ...alignColumns([header, ...rows]),
    '',
    ...more,
    CAUTION,
    '',
  ].join('\n');
}

/** What spot and cover are and add, by kind of night, with the range of what is known; nothing in the open. */
function standingLines({ standing, types }: Assessment): string[] {
  const levels = types[0]?.levels ?? [];
  if (standing === '') return [];
  const told = new Map<string, Level[]>();
  for (const level of levels) {
    const words = gainLine(level);
    told.set(words, [...(told.get(words) ?? []), level.level]);
  }
  const sentence = standing.charAt(0).toUpperCase() + standing.slice(1);
  return [`${sentence}.`, ...[...told].map(([words, at]) => `Adds at ${at.join(', ')}: ${words}.`)];
}

function gainLine({ gain_calm_c, gain_windy_c, if_gain: { low, high } }: LevelAnswer): string {
  const f = (gainC: number): string => celsiusDifferenceToFahrenheit(gainC).toFixed(1);
  const words = (centre: number, least: number, most: number): string =>
    `${centre.toFixed(1)} °C (${f(centre)} °F, ${f(least)} to ${f(most)})`;
  return (
    `${words(gain_calm_c, low.gain_calm_c, high.gain_calm_c)} on calm nights, ` +
    `${words(gain_windy_c, low.gain_windy_c, high.gain_windy_c)} on windy nights`
  );
}

/** How good the level of estimated winters is: one standard error, in both units. */
function levelError(errorC: number): string {
  return `Level of these winters good to about ±${errorC.toFixed(1)} °C (±${celsiusDifferenceToFahrenheit(errorC).toFixed(1)} °F; two times in three).`;
}

/** One row a type and level; temperatures in °C and °F, periods in winters, empty for unknown or without end. */
export function assessCsv({ types }: Assessment): string {
  const header =
    'type,level,threshold_c,threshold_f,hours,penalty_c,hits,winters,counted_period,counted_low,counted_high,' +
    'fitted_period,fitted_low,fitted_high,period,low,high,basis,agrees,years,chance,chance_low,chance_high,nights_per_winter,gain_calm_c,gain_windy_c';
  return [header, ...types.flatMap((type) => type.levels.map((level) => csvRow(type, level))), ''].join('\n');
}

function csvRow(type: TypeAnswer, level: LevelAnswer): string {
  const { counted, fitted, headline, chance_in_years: chance } = level;
  const penalty = Object.values(level.penalties_c).reduce((sum, value) => sum + value, 0);
  return csvLine([
    type.id,
    level.level,
    level.threshold_c,
    celsiusToFahrenheit(level.threshold_c),
    level.hours,
    penalty,
    counted.hits,
    counted.winters,
    counted.period,
    counted.low,
    counted.high,
    fitted?.period,
    fitted?.low,
    fitted?.high,
    headline.period,
    headline.low,
    headline.high,
    headline.basis,
    headline.agrees,
    chance.years,
    chance.p,
    chance.low,
    chance.high,
    level.nights_per_winter,
    level.gain_calm_c,
    level.gain_windy_c,
  ]);
}

function levelCell({ level, headline, counted, if_threshold: ends }: LevelAnswer): string {
  const { period, low, high, basis, agrees } = headline;
  const count = `{${counted.hits} of ${counted.winters}}${agrees ? '' : ' fit and count disagree'}`;
  if (basis === 'not seen') return `not seen, could be 1 in ${round(low)} ${count}`;
  if (basis === 'beyond') return `1 in ${round(low)} or rarer ${count}`;
  if (level === 'kill' && ends.high.period !== null) {
    // A hardier end with a shorter number is a bound, not an estimate: the band then has no far end.
    const rarest = ends.low.period ?? 0;
    const end = rarest >= period! ? `to ${round(rarest)}` : `to ${round(period)} or rarer`;
    return `1 in ${round(ends.high.period)} ${end} ${count}`;
  }
  const open = high === null || high > longestClaim(counted.winters);
  return `1 in ${round(period)} [${round(low)}${open ? ' or rarer' : `-${round(high)}`}] ${count}`;
}

function round(period: number | null): string {
  if (period === null) return '?';
  return period < 9.95 ? period.toFixed(1) : String(Math.round(period));
}
