import { t } from '../language/t.ts';
import { InputError, UnclearError } from '../records/input-error.ts';
import { formatIsoDay } from '../units/calendar.ts';
import type { BadRows } from './bad-rows.ts';
import { DateOrderEvidence, ordered, type DateOrder } from './dates.ts';
import type { StationRows } from './station-rows.ts';

/** Hourly times may step back this much: a clock set back, a late report. */
const HOURS_BACK_ALLOWED = 2;
/** From this many rows on, rows that step back together are a block, not a slip. */
const BLOCK_ROWS = 20;
/** So many steps back, and none forward, make a file that is written newest first. */
const FEWEST_BACKWARD = 2;

/**
 * Decides for the whole file whether dates such as 08/12/1950 are day first or month first, and turns them to day
 * numbers; rows whose day then doesn't exist are counted and left out.
 * @param given the order to take where the dates leave it open, null where nobody told it.
 * @throws {InputError} when dates contradict each other.
 * @throws {UnclearError} when nothing tells their order.
 */
export function settleDates(
  stations: readonly StationRows[],
  fileName: string,
  bad: BadRows,
  given: Exclude<DateOrder, 'auto'> | null = null,
): void {
  const evidence = new DateOrderEvidence();
  for (const rows of stations) {
    for (let i = 0; i < rows.length; i += 1) evidence.add(rows.day[i]!, rows.line[i]!);
  }
  const told = evidence.decide();
  const order = told === 'unclear' ? (given ?? told) : told;
  if (order === null) return;
  if (order === 'both') {
    throw new InputError(
      t`${fileName}: the date in line ${evidence.dayFirstLine} can only be day first, the one in line ${evidence.monthFirstLine} only month first.`,
    );
  }
  if (order === 'unclear') {
    throw new UnclearError(
      t`${fileName}: nothing tells whether dates are day first or month first: a column map with "dateOrder" is needed.`,
      'dateOrder',
    );
  }
  for (const rows of stations) {
    let lost = false;
    const exists = new Uint8Array(rows.length);
    for (let i = 0; i < rows.length; i += 1) {
      const day = ordered(rows.day[i]!, order);
      exists[i] = Number.isNaN(day) ? 0 : 1;
      if (exists[i] === 1) rows.day[i] = day;
      else {
        lost = true;
        bad.add(
          t`impossible date`,
          rows.line[i]!,
          t`read as ${order === 'day first' ? t`day first` : t`month first`}`,
        );
      }
    }
    if (lost) rows.filter((row) => exists[row] === 1);
  }
}

/**
 * Refuses a station with a day out of its place. Fine are a file that runs backward throughout (newest first), repeated
 * days, and whole blocks of at least {@link BLOCK_ROWS} rows written late or twice, as when monthly downloads were
 * appended: cleaning settles those. The number of such blocks is returned.
 * @throws {InputError} naming the first line whose date lies before the one before it.
 */
export function refuseDisorder(rows: StationRows, hourly: boolean, fileName: string): number {
  const first = blocksOutOfOrder(rows, rows.first, hourly, fileName);
  return hourly ? first : Math.max(first, blocksOutOfOrder(rows, rows.second, false, fileName));
}

function blocksOutOfOrder(
  rows: StationRows,
  values: Float64Array,
  hourly: boolean,
  fileName: string,
): number {
  const allowed = hourly ? HOURS_BACK_ALLOWED : 0;
  const time = (row: number): number => (hourly ? rows.day[row]! * 24 + rows.hour[row]! : rows.day[row]!);
  const steps: { row: number; before: number }[] = [];
  let [previous, forward, runStart, count, shortRun] = [-1, 0, 0, 0, false];
  for (let i = 0; i < rows.length; i += 1) {
    if (Number.isNaN(values[i]!)) continue;
    if (previous >= 0 && time(i) < time(previous) - allowed) {
      if (count - runStart < BLOCK_ROWS) shortRun = true;
      steps.push({ row: i, before: previous });
      runStart = count;
    } else if (previous >= 0 && time(i) > time(previous)) forward += 1;
    previous = i;
    count += 1;
  }
  if (steps.length === 0 || (forward === 0 && steps.length >= FEWEST_BACKWARD)) return 0;
  if (!shortRun && count - runStart >= BLOCK_ROWS) return steps.length;
  const { row, before } = steps[0]!;
  const date = (at: number): string => formatIsoDay(Math.floor(hourly ? time(at) / 24 : time(at)));
  throw new InputError(
    t`${fileName}, line ${rows.line[row]}: dates out of order, ${date(row)} comes after ${date(before)}${rows.id ? t` (station ${rows.id})` : ''}.`,
  );
}
