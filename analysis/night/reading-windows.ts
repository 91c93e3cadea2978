/** Two readings further apart than this leave a gap, hours: a window over a gap is unknown. */
export const GAP_H = 3;
/** A reading so close to a window's end stands for it, hours: routine reports wander by some minutes. */
export const NEAR_H = 0.1;

/** Readings in local solar time (hours since the epoch, strictly increasing) and °C. */
export interface Readings {
  readonly timeH: Float64Array;
  readonly tempC: Float64Array;
}

/** For each night the coldest known window, and the coldest that an unknown window could still be. */
export interface WindowMinima {
  readonly coldest: Float64Array;
  /** Warmest known reading of the unknown window that has the coldest such: that window can't be colder. */
  readonly unknownFrom: Float64Array;
}

/**
 * Offers every window of `hours` that begins at a reading to the night (index `floor((midpoint + 12) / 24) - firstNight`)
 * its midpoint falls into. A window's level is its warmest reading, both ends included: of hourly readings it holds
 * `hours + 1`. Where no reading stands at the window's end, the end is taken on the straight line between its neighbours.
 * With `backward` the windows that end at a reading are offered instead; on evenly spaced readings they are the same.
 */
export function offerWindows(
  readings: Readings,
  hours: number,
  firstNight: number,
  minima: WindowMinima,
  backward: boolean,
): void {
  const { timeH, tempC } = readings;
  const n = timeH.length;
  const sign = backward ? -1 : 1;
  const at = (k: number): number => (backward ? n - 1 - k : k);
  const nights = minima.coldest.length;
  const queue = new Int32Array(n);
  let head = 0;
  let tail = 0;
  let next = 0;
  let lastGap = -1;
  for (let k = 0; k < n; k++) {
    const start = sign * timeH[at(k)];
    const end = start + hours;
    while (next < n && sign * timeH[at(next)] <= end + NEAR_H) {
      const value = tempC[at(next)];
      while (tail > head && tempC[at(queue[tail - 1])] <= value) tail--;
      queue[tail++] = next;
      if (next > 0 && Math.abs(timeH[at(next)] - timeH[at(next - 1)]) > GAP_H + NEAR_H) lastGap = next;
      next++;
    }
    while (queue[head] < k) head++;
    const last = sign * timeH[at(next - 1)];
    let level = tempC[at(queue[head])];
    let known = lastGap <= k;
    if (last < end - NEAR_H) {
      const beyond = next < n ? sign * timeH[at(next)] : Infinity;
      if (beyond - last > GAP_H + NEAR_H) known = false;
      else {
        const share = (end - last) / (beyond - last);
        const atEnd = tempC[at(next - 1)] + share * (tempC[at(next)] - tempC[at(next - 1)]);
        level = Math.max(level, atEnd);
      }
    }
    const night = Math.floor((sign * (start + hours / 2) + 12) / 24) - firstNight;
    if (night < 0 || night >= nights) continue;
    const best = known ? minima.coldest : minima.unknownFrom;
    if (level < best[night]) best[night] = level;
  }
}
