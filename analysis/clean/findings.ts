import { sayFigure } from '../language/figures.ts';
import { t } from '../language/t.ts';
import type { DroppedValue } from '../records/series.ts';
import { formatIsoDay, type DayNumber } from '../units/calendar.ts';

/** What cleaning found in one station's readings. */
export class Findings {
  readonly dropped: DroppedValue[] = [];
  readonly doubtful: DroppedValue[] = [];
  readonly notes: string[] = [];
  private readonly stationId: string;

  constructor(stationId: string) {
    this.stationId = stationId;
  }

  drop(
    day: DayNumber,
    element: DroppedValue['element'],
    valueC: number,
    reason: string,
    detail: string,
  ): void {
    this.dropped.push({ stationId: this.stationId, day, element, valueC, reason, detail });
  }

  doubt(
    day: DayNumber,
    element: DroppedValue['element'],
    valueC: number,
    reason: string,
    detail: string,
  ): void {
    this.doubtful.push({ stationId: this.stationId, day, element, valueC, reason, detail });
  }

  note(sentence: string): void {
    this.notes.push(sentence);
  }

  /** Takes doubts off values that were dropped by a later rule. */
  settle(): void {
    const gone = new Set(this.dropped.map((value) => `${value.element}${value.day} ${value.valueC}`));
    const kept = this.doubtful.filter((value) => !gone.has(`${value.element}${value.day} ${value.valueC}`));
    this.doubtful.splice(0, this.doubtful.length, ...kept);
  }
}

/** `-17.2 °C on 1948-04-30`. */
export function shown(valueC: number, day: DayNumber): string {
  return t`${sayFigure(valueC, 1)} °C on ${formatIsoDay(day)}`;
}
