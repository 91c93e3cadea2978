import type { Subject } from '../../../analysis/answer/subject.ts';
import { inventedWinters } from './invented-winters.ts';

/** Label of the first winter. */
export const FIRST = 1960;

/** A station north of the equator with so many winters, some of them not complete, their minima around `middleC`. */
export function inventedSubject(winters: number, notComplete: readonly number[] = [], middleC = -2): Subject {
  const made = inventedWinters(winters, middleC);
  const complete = made.complete.slice();
  for (const winter of notComplete) complete[winter - FIRST] = 0;
  return {
    place: { label: 'Invented', lat: 30, lon: -90, elevation_m: 5, basis: 'station' },
    winters: { ...made, complete },
    neighbours: [],
    evidence: [],
    notes: [],
  };
}
