import type { CalendarTask, DateChance, FreezeDates, HarvestYear } from '../../../../analysis/answer/year.ts';
import { DATE_CHANCES } from '../../../../analysis/answer/year.ts';

/** Dates by chance from those given; chances beyond them have none. */
export function chances(dates: readonly string[]): readonly DateChance[] {
  return DATE_CHANCES.map((chance, i) => {
    const date = dates[i] ?? null;
    return { chance, date, low: date, high: date };
  });
}

/** Freeze dates of invented figures. */
export function madeDates(part: Partial<FreezeDates> = {}): FreezeDates {
  return {
    limit_c: -20 / 9,
    hours: 4,
    winters: 40,
    share_without: 0.6,
    first: chances(['12-02', '01-10']),
    last: chances(['02-20', '01-20']),
    earliest: '11-14',
    latest: '03-02',
    ...part,
  };
}

export function madeHarvest(part: Partial<HarvestYear> = {}): HarvestYear {
  return {
    from: '11-01',
    to: '12-31',
    basis: 'found',
    always_exposed: false,
    halves: [
      { from: '11-01', to: '11-15', lost: 0, low: 0, high: 0.05 },
      { from: '11-16', to: '11-30', lost: 0.05, low: 0.02, high: 0.12 },
      { from: '12-01', to: '12-15', lost: 0.2, low: 0.1, high: 0.3 },
      { from: '12-16', to: '12-31', lost: 0.3, low: 0.2, high: 0.42 },
    ],
    lost_before_ripe: 0,
    lost_before_end: 0.3,
    pick_by: '12-04',
    lost_by_pick_by: { lost: 0.075, low: 0.03, high: 0.16 },
    safe_to_the_end: false,
    ...part,
  };
}

export function madeTask(part: Partial<CalendarTask> = {}): CalendarTask {
  return {
    id: 'covers-ready',
    title: 'Have the covers ready',
    from: '11-27',
    to: null,
    why: 'In 1 winter of 10 the first such night has come by this date.',
    basis: 'record',
    sources: [],
    ...part,
  };
}

/** Without spaces that don't break. */
export function plain(text: string): string {
  return text.replaceAll('\u00a0', ' ');
}
