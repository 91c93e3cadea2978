/** Fewest values in a block that can prove whole degrees Fahrenheit: by chance 5 in 9 tenths of °C fit, 20 in a row 1 in 100,000. */
const FEWEST = 20;
/** Share of a block's values that must fit; single strays come from another source. */
const SHARE = 0.97;

/** The °F that a tenth of °C may have been made from, NaN when none was. */
function wholeFahrenheit(valueC: number): number {
  const fahrenheit = Math.round(valueC * 1.8 + 32);
  const stored = Math.round(((fahrenheit - 32) / 1.8) * 10) / 10;
  return Math.abs(stored - valueC) < 1e-6 ? fahrenheit : NaN;
}

/**
 * Gives whole degrees Fahrenheit that were stored as tenths of °C their full value again (-2.2 becomes -2.2222, 28 °F),
 * so that comparing with 28 °F works. Done in blocks (months), because a record may change its unit; a block with too
 * few values follows the one before it. In place.
 *
 * @param columns arrays of °C that share their blocks, NaN for missing.
 * @param blockOf block of each entry, not decreasing.
 * @returns the number of values restored.
 */
export function restoreFahrenheit(
  columns: readonly Float64Array[],
  blockOf: (entry: number) => number,
): number {
  const length = columns[0]?.length ?? 0;
  let restored = 0;
  let before = false;
  for (let from = 0; from < length;) {
    const block = blockOf(from);
    let to = from;
    let [known, fitting, wholeC] = [0, 0, 0];
    for (; to < length && blockOf(to) === block; to += 1) {
      for (const values of columns) {
        const value = values[to]!;
        if (Number.isNaN(value)) continue;
        known += 1;
        if (!Number.isNaN(wholeFahrenheit(value))) fitting += 1;
        if (Number.isInteger(value)) wholeC += 1;
      }
    }
    const proven = known >= FEWEST && fitting >= known * SHARE && wholeC < known * 0.6;
    const isFahrenheit = known >= FEWEST ? proven : before && fitting === known;
    if (known >= FEWEST) before = proven;
    if (isFahrenheit) {
      for (let entry = from; entry < to; entry += 1) {
        for (const values of columns) {
          const fahrenheit = wholeFahrenheit(values[entry]!);
          if (Number.isNaN(fahrenheit)) continue;
          const exact = (fahrenheit - 32) / 1.8;
          if (exact === values[entry]) continue;
          values[entry] = exact;
          restored += 1;
        }
      }
    }
    from = to;
  }
  return restored;
}

/** Whether most of a record's values (°C) are exact whole degrees Fahrenheit, as after restoring. */
export function isWrittenInFahrenheit(columns: readonly Float64Array[]): boolean {
  let [known, whole] = [0, 0];
  for (const values of columns) {
    for (const value of values) {
      if (Number.isNaN(value)) continue;
      known += 1;
      const fahrenheit = value * 1.8 + 32;
      if (Math.abs(fahrenheit - Math.round(fahrenheit)) < 1e-6) whole += 1;
    }
  }
  return whole > known * 0.5;
}
