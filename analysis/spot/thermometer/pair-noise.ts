/**
 * How the minima of two neighbouring stations differ from night to night about the median of their differences: Student's
 * t. Fitted to pairs of the public records of AEMET (Spain, 12 ordered pairs) and of Georgia's farm network (2): stations
 * within 25 km and 150 m of height of each other, nights of November to March at or below 10 °C, differences about their
 * median over 11 winters. Windy: the farm network of Trentino, within 20 km (14 ordered pairs), since the others have few
 * windy nights. Measured again by `tests/real-data/thermometer-pairs.test.ts`.
 */
export const PAIR_NOISE = {
  calm: { scaleC: 1.03, degreesOfFreedom: 7 },
  windy: { scaleC: 1.46, degreesOfFreedom: 8 },
} as const;

/** Standard deviation of that noise, °C. */
export function pairNoiseC(kind: keyof typeof PAIR_NOISE): number {
  const { scaleC, degreesOfFreedom } = PAIR_NOISE[kind];
  return scaleC * Math.sqrt(degreesOfFreedom / (degreesOfFreedom - 2));
}

/**
 * How alike the noise of two nights is, so many days apart: correlation, 1 on the same night. Nights of one cold spell share
 * their air (0.30, fading over 3 days), nights of one season its ground, leaf and snow (0.22, over 30 days). In the pairs
 * above it is 0.35 to 0.5 from one night to the next, 0.2 after a week, 0.1 after a month.
 */
export function nightLikeness(daysApart: number): number {
  const days = Math.abs(daysApart);
  return days === 0 ? 1 : 0.3 * Math.exp(-days / 3) + 0.22 * Math.exp(-days / 30);
}
