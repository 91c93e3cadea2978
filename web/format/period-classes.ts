/**
 * The cold ramp: return periods in six steps, the colour token and the words of each. Class 6 is the most frequent.
 * Bounds are whole winters; a period on a bound belongs to the more frequent step.
 */
export const PERIOD_CLASSES = [
  { step: 6, token: '--cold-6', upToWinters: 2, label: '1 in 2 or oftener' },
  { step: 5, token: '--cold-5', upToWinters: 5, label: '1 in 2 to 5' },
  { step: 4, token: '--cold-4', upToWinters: 10, label: '1 in 5 to 10' },
  { step: 3, token: '--cold-3', upToWinters: 20, label: '1 in 10 to 20' },
  { step: 2, token: '--cold-2', upToWinters: 50, label: '1 in 20 to 50' },
  { step: 1, token: '--cold-1', upToWinters: Infinity, label: 'rarer than 1 in 50' },
] as const;

export type PeriodClass = (typeof PERIOD_CLASSES)[number];

/** Step of the ramp for a return period in winters; `null` (no end) is the rarest step. */
export function periodClass(periodWinters: number | null): PeriodClass {
  const period = periodWinters ?? Infinity;
  return PERIOD_CLASSES.find((entry) => period <= entry.upToWinters) ?? PERIOD_CLASSES[5];
}
