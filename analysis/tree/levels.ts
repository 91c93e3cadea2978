/** What cold takes, from the tenderest to the hardiest: fruit, leaf and twig, major limbs, the tree down to its graft. */
export const LEVELS = ['fruit', 'leaf', 'wood', 'kill'] as const;
export type Level = (typeof LEVELS)[number];

/** A value for each level. */
export function byLevel<T>(valueAt: (level: Level) => T): Record<Level, T> {
  return Object.fromEntries(LEVELS.map((level) => [level, valueAt(level)])) as Record<Level, T>;
}
