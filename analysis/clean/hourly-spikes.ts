/** A jump this large (°C) away from both sides, which themselves agree, is no weather. */
const JUMP_C = 8;
/** The two sides agree when they differ by less than this share of the jump. */
const SIDES_AGREE = 0.4;
/** Longest run of readings looked for, and how far apart its sides may lie, hours. */
const LONGEST_RUN = 3;
const SIDES_WITHIN_H = 6;
/** The air may warm or cool this fast on either side of a true dip, °C an hour: fronts and basins have been seen near it. */
const FASTEST_C_PER_H = 8;

/**
 * Readings of a run of one to three that leave both sides by 8 °C or more, faster than the air changes, and come back.
 * @returns indices, in order.
 */
export function spikeReadings(timeH: Float64Array, tempC: Float64Array): number[] {
  const found: number[] = [];
  for (let start = 1; start < tempC.length - 1; start += 1) {
    const left = tempC[start - 1]!;
    if (Math.abs(tempC[start]! - left) < JUMP_C) continue;
    for (let run = 1; run <= LONGEST_RUN && start + run < tempC.length; run += 1) {
      const end = start + run;
      if (!isSpike(timeH, tempC, start, end)) continue;
      for (let at = start; at < end; at += 1) found.push(at);
      start = end - 1;
      break;
    }
  }
  return found;
}

/** Whether readings `start` to before `end` stand off both sides. */
function isSpike(timeH: Float64Array, tempC: Float64Array, start: number, end: number): boolean {
  const [left, right] = [tempC[start - 1]!, tempC[end]!];
  if (timeH[end]! - timeH[start - 1]! > SIDES_WITHIN_H) return false;
  let least = Infinity;
  const sign = Math.sign(tempC[start]! - left);
  for (let at = start; at < end; at += 1) {
    least = Math.min(least, sign * (tempC[at]! - left), sign * (tempC[at]! - right));
  }
  if (least < JUMP_C || Math.abs(left - right) > SIDES_AGREE * least) return false;
  const into = timeH[start]! - timeH[start - 1]!;
  const out = timeH[end]! - timeH[end - 1]!;
  return least / Math.max(into, 0.25) >= FASTEST_C_PER_H && least / Math.max(out, 0.25) >= FASTEST_C_PER_H;
}
