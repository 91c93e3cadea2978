import type { LevelAnswer, Ranking, TypeAnswer } from '../../../../analysis/answer/assessment.ts';
import type { AgeShare, LifeReading, TypeLife } from '../../../../analysis/answer/life.ts';
import type { Level } from '../../../../analysis/tree/levels.ts';

/** One level's answer: 1 winter in `period`, from half to twice that, hit in the winters named. */
export function madeLevel(level: Level, period: number, hitWinters: readonly number[] = []): LevelAnswer {
  const headline = { period, low: period / 2, high: period * 2, basis: 'fitted' as const, agrees: true };
  const end = { gain_calm_c: 0, gain_windy_c: 0, headline };
  return {
    ...{ level, threshold_c: { fruit: -2, leaf: -4, wood: -6, kill: -8 }[level], hours: 4 },
    ...{ penalties_c: { age: 1 }, gain_calm_c: 0, gain_windy_c: 0 },
    counted: {
      ...{ hits: hitWinters.length, winters: 60, period, low: period / 2, high: period * 2 },
      ...{ hit_winters: hitWinters, hit_incomplete: [] },
    },
    fitted: { period, low: period / 2, high: period * 2 },
    headline,
    if_threshold: {
      low: { threshold_c: -9, period: period * 3 },
      high: { threshold_c: -7, period: period / 2 },
    },
    if_gain: { low: end, high: end },
    with_duration: { hits: 0, period: null },
    chance_in_years: { years: 10, p: 0.5, low: 0.3, high: 0.7 },
    nights_per_winter: null,
    beside: { likelihood_period: null, window_share: null, windows: 0, recent: null },
  };
}

/** A type with all its levels, `factor` times as rare as 1 in 3 (fruit) to 1 in 30 (life). */
export function madeType(id: string, name: string, factor = 1): TypeAnswer {
  return {
    ...{ id, name, use: 'eating' },
    levels: [
      madeLevel('fruit', 3 * factor, [1962, 1970, 1983]),
      madeLevel('leaf', 8 * factor, [1962, 1983]),
      madeLevel('wood', 15 * factor, [1983]),
      madeLevel('kill', 30 * factor, factor > 1 ? [] : [1983]),
    ],
  };
}

/** Sixty winters from 1960 on, the coldest 1983, with these types. */
export function madeRanking(types: readonly TypeAnswer[]): Ranking {
  const coldest: Record<number, number> = { 1962: -4, 1970: -2.5, 1983: -9 };
  return {
    place: { label: 'Ewer Reach', lat: 30.9, lon: -42, elevation_m: 12, basis: 'station' },
    winters: { used: 60, first: 1960, last: 2019, left_out: [] },
    history: Array.from({ length: 60 }, (_, i) => ({
      winter: 1960 + i,
      complete: true,
      m_c: { 4: coldest[1960 + i] ?? 0 },
    })),
    ...{
      graft_history: null,
      types,
      trend: null,
      standing: '',
      standing_problems: [],
      evidence: [],
      notes: [],
    },
  };
}

const age = (share: number): AgeShare => ({
  ...{ age: 10, followed: 50, alive: Math.round(50 * share), share, low: share - 0.1, high: share + 0.1 },
  ...{ kaplan_meier: share, basis: 'record', if_threshold: { low: null, high: null } },
});

/** A life of which only the share living at ten years matters. */
export function madeLife(id: string, colder: number, hardened: number): TypeLife {
  const reading = (share: number) => ({ ten_years: age(share) }) as LifeReading;
  return { id, night_by_night: reading(colder), hardened: reading(hardened) } as TypeLife;
}
