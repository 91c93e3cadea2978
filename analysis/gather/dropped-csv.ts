import type { DroppedValue } from '../records/series.ts';
import { formatIsoDay } from '../units/calendar.ts';
import { csvText } from './night-csv.ts';

/** Lines of the `dropped` table. */
export function droppedCsv(values: readonly DroppedValue[], verdict: 'dropped' | 'doubtful'): string {
  return values
    .map(({ stationId, day, element, valueC, reason, detail }) =>
      [
        csvText(stationId),
        formatIsoDay(day),
        element,
        valueC,
        verdict,
        csvText(reason),
        csvText(detail),
      ].join(','),
    )
    .map((line) => `${line}\n`)
    .join('');
}
