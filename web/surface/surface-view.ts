import type { Surface } from '../state/ports.ts';

/** What the map shows: periods of one question, two of them against each other, or where one period is long enough. */
export type SurfaceView =
  | { readonly mode: 'periods'; readonly surface: Surface }
  | { readonly mode: 'difference'; readonly surface: Surface; readonly against: Surface }
  | { readonly mode: 'where'; readonly surface: Surface; readonly atLeastWinters: number };

/** The longest period told about two cells at once, winters: the shorter of their claims, so that both are treated alike. */
export function commonClaim(a: Surface, b: Surface, cell: number): number {
  return Math.min(a.longestClaims[cell], b.longestClaims[cell]);
}

/**
 * How many times longer the first period is than the second, both cut where the shorter claim ends; `null` without an answer
 * or where both are rarer than that. Swapping the two gives the inverse.
 */
export function periodRatio(a: Surface, b: Surface, cell: number): number | null {
  if (a.states[cell] !== 1 || b.states[cell] !== 1) return null;
  const claim = commonClaim(a, b, cell);
  const [first, second] = [a.periods[cell], b.periods[cell]];
  if (Number.isNaN(first) || Number.isNaN(second) || (first > claim && second > claim)) return null;
  return Math.min(first, claim) / Math.min(second, claim);
}

/** Whether the period of a cell reaches so many winters; `null` without an answer or where the record is too short to say. */
export function reaches(surface: Surface, cell: number, winters: number): boolean | null {
  const [period, claim] = [surface.periods[cell], surface.longestClaims[cell]];
  if (surface.states[cell] !== 1 || Number.isNaN(period)) return null;
  if (period > claim && claim < winters) return null;
  return period >= winters;
}

/** Shares of the land, 0-1, by area: where the period reaches so many winters, and where nothing can be said. */
export function landShares(surface: Surface, winters: number): { reached: number; unknown: number } {
  let [land, reached, unknown] = [0, 0, 0];
  for (let cell = 0; cell < surface.states.length; cell++) {
    if (surface.states[cell] === 0) continue;
    const lat = surface.south + Math.floor(cell / surface.columns) * surface.stepLatDeg;
    const area = Math.cos((lat * Math.PI) / 180);
    const answer = reaches(surface, cell, winters);
    land += area;
    if (answer === null) unknown += area;
    else if (answer) reached += area;
  }
  return land === 0 ? { reached: 0, unknown: 1 } : { reached: reached / land, unknown: unknown / land };
}
