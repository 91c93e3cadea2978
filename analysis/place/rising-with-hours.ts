import { MISSING_HUNDREDTHS } from '../records/nights.ts';

/** Weight of a level that must stay as it is. */
const FIXED = 1e9;

/**
 * Levels by duration of nights estimated one duration after another, made to rise with the hours: levels that fall are
 * pooled to their mean (isotonic regression by pooling adjacent violators, Barlow et al. 1972). Fixed ones stay, as long as
 * they rise themselves; nothing falls below a fixed level that it was at or above for its own hours.
 * @param levels `levels[j][t]`, hundredths of °C, NaN for unknown
 * @param fixed by duration the nights whose level must stay
 * @returns whole hundredths, MISSING_HUNDREDTHS for unknown
 */
export function risingWithHours(
  levels: readonly Float64Array[],
  fixed: readonly (readonly number[])[],
): Int16Array[] {
  const result = levels.map((own) => new Int16Array(own.length).fill(MISSING_HUNDREDTHS));
  const stays = fixed.map((nights) => new Set(nights));
  for (let t = 0; t < levels[0].length; t++) {
    const blocks: { mean: number; weight: number; hours: number[] }[] = [];
    for (let j = 0; j < levels.length; j++) {
      if (Number.isNaN(levels[j][t])) continue;
      let block = { mean: levels[j][t], weight: stays[j].has(t) ? FIXED : 1, hours: [j] };
      for (let last = blocks.at(-1); last && last.mean > block.mean; last = blocks.at(-1)) {
        blocks.pop();
        const weight = last.weight + block.weight;
        block = {
          mean: (last.weight * last.mean + block.weight * block.mean) / weight,
          weight,
          hours: [...last.hours, ...block.hours],
        };
      }
      blocks.push(block);
    }
    for (const { mean, hours } of blocks) for (const j of hours) result[j][t] = Math.round(mean);
  }
  return result;
}
