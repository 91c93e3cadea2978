/** Fewest values in a block that can prove whole degrees Fahrenheit: by chance 5 in 9 tenths of °C fit, 20 in a row 1 in 100,000. */
const FEWEST = 20;
/** Share of a block's values that must fit; single strays come from another source. */
const SHARE = 0.97;

/** How a source turned whole °F into tenths of °C. */
type Rounding = 'nearest' | 'cut';

/**
 * The °F that a tenth of °C may have been made from, NaN when none was. Some archives add a half and cut, which below
 * zero is one tenth too warm: 28 °F becomes -2.1 instead of -2.2 (seen in GHCN-Daily at airports since 2013).
 */
function wholeFahrenheit(valueC: number, rounding: Rounding): number {
  const fahrenheit = Math.round(valueC * 1.8 + 32 - (rounding === 'cut' && valueC < 0 ? 0.09 : 0));
  const tenths = ((fahrenheit - 32) / 1.8) * 10;
  const stored = rounding === 'nearest' ? Math.round(tenths) : Math.trunc(tenths + 0.5);
  return Math.abs(stored / 10 - valueC) < 1e-6 ? fahrenheit : NaN;
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
  let before: Rounding | null = null;
  for (let from = 0; from < length;) {
    let to = from + 1;
    const block = blockOf(from);
    while (to < length && blockOf(to) === block) to += 1;
    const { known, wholeC, nearest, cut } = evidenceOf(columns, from, to);
    const rounding: Rounding = cut > nearest ? 'cut' : 'nearest';
    const fitting = Math.max(cut, nearest);
    if (known >= FEWEST) before = fitting >= known * SHARE && wholeC < known * 0.6 ? rounding : null;
    const used =
      known >= FEWEST
        ? before
        : before !== null && (before === 'cut' ? cut : nearest) === known
          ? before
          : null;
    if (used !== null) restored += restoreBlock(columns, from, to, used);
    from = to;
  }
  return restored;
}

interface Evidence {
  readonly known: number;
  readonly wholeC: number;
  readonly nearest: number;
  readonly cut: number;
}

function evidenceOf(columns: readonly Float64Array[], from: number, to: number): Evidence {
  let [known, wholeC, nearest, cut] = [0, 0, 0, 0];
  for (const values of columns) {
    for (let at = from; at < to; at += 1) {
      const value = values[at]!;
      if (Number.isNaN(value)) continue;
      known += 1;
      if (Number.isInteger(value)) wholeC += 1;
      if (!Number.isNaN(wholeFahrenheit(value, 'nearest'))) nearest += 1;
      if (!Number.isNaN(wholeFahrenheit(value, 'cut'))) cut += 1;
    }
  }
  return { known, wholeC, nearest, cut };
}

function restoreBlock(
  columns: readonly Float64Array[],
  from: number,
  to: number,
  rounding: Rounding,
): number {
  let restored = 0;
  for (const values of columns) {
    for (let at = from; at < to; at += 1) {
      const exact = (wholeFahrenheit(values[at]!, rounding) - 32) / 1.8;
      if (Number.isNaN(exact) || exact === values[at]) continue;
      values[at] = exact;
      restored += 1;
    }
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
