/** How many stretches of consecutive winters had at least one hit. */
export interface WindowShare {
  /** Windows with a hit / windows, null when no window fits in the record. */
  readonly share: number | null;
  readonly windows: number;
}

/**
 * Observed share of windows of `length` consecutive complete winters with at least one hit, every start counted. It
 * stands beside the fitted chance, which takes winters as independent: winters that cluster make the share smaller.
 * @param winters labels of complete winters, increasing; a gap in them is crossed by no window.
 * @param hits 1 (or true) where that winter was hit.
 */
export function windowShare(
  winters: ArrayLike<number>,
  hits: ArrayLike<number | boolean>,
  length: number,
): WindowShare {
  if (!(Number.isInteger(length) && length >= 1))
    throw new RangeError(`A window needs a whole number of winters from 1 on, not ${length}.`);
  let windows = 0;
  let withHit = 0;
  let run = 0;
  let sinceHit = Infinity;
  for (let i = 0; i < winters.length; i++) {
    run = i > 0 && winters[i] === winters[i - 1]! + 1 ? run + 1 : 1;
    sinceHit = hits[i] ? 0 : sinceHit + 1;
    if (run < length) continue;
    windows++;
    if (sinceHit < length) withHit++;
  }
  return { share: windows > 0 ? withHit / windows : null, windows };
}
