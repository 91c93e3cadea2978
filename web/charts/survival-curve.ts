import type { AgeShare } from '../../analysis/answer/life.ts';

/** A value that holds until the age at which it falls. */
interface Step {
  readonly age: number;
  readonly value: number;
}

type Place = (value: number) => number;

/** Shares known from age 1 on, cut where the first is missing; every tree lives at planting. */
function steps(living: readonly AgeShare[], of: (age: AgeShare) => number | null): readonly Step[] {
  const known: Step[] = [{ age: 0, value: 1 }];
  for (const age of living) {
    const value = of(age);
    if (value === null) break;
    known.push({ age: age.age, value });
  }
  return known;
}

/** Corners of a step line: level up to an age, then down to the share living after that winter. */
function corners(line: readonly Step[], x: Place, y: Place): readonly (readonly [number, number])[] {
  return line.flatMap(({ age, value }, i): [number, number][] =>
    i === 0
      ? [[x(age), y(value)]]
      : [
          [x(age), y(line[i - 1].value)],
          [x(age), y(value)],
        ],
  );
}

/** The curve as corners in px, from `fromAge` on (0: planting). */
export function shareCorners(
  living: readonly AgeShare[],
  x: Place,
  y: Place,
): readonly (readonly [number, number])[] {
  return corners(
    steps(living, ({ share }) => share),
    x,
    y,
  );
}

/** The band between the ends of the range: there along one, back along the other; empty while there is no range. */
export function bandCorners(
  living: readonly AgeShare[],
  x: Place,
  y: Place,
): readonly (readonly [number, number])[] {
  const [low, high] = [steps(living, (age) => age.low), steps(living, (age) => age.high)];
  if (low.length < 2 || high.length < 2) return [];
  return [...corners(high, x, y), ...[...corners(low, x, y)].reverse()];
}

/** Oldest age that the record itself reaches, 0 where none does. */
export function recordEnd(living: readonly AgeShare[]): number {
  return Math.max(0, ...living.filter(({ basis }) => basis === 'record').map(({ age }) => age));
}

/** Ages to label: multiples of 5 or 10 with room, the first and the horizon always in reach of them. */
export function ageTicks(horizon: number, pxPerYear: number, minGap = 44): readonly number[] {
  const step = [1, 5, 10, 20].find((candidate) => candidate * pxPerYear >= minGap) ?? 20;
  return Array.from({ length: Math.floor(horizon / step) + 1 }, (_, i) => i * step);
}
