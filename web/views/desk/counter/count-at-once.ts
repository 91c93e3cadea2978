import { keep, readKept, type Storage } from '../../../state/kept.ts';

/** Set to `yes` once nights were counted on this device: later customers have them at once. */
const COUNTED_KEY = 'desk-nights';

/** Whether nights are counted without being asked for: it was done here before, or the database engine is on this device already. */
export function countsAtOnce(storage: Storage | null, engineKept: boolean): boolean {
  return engineKept || readKept(storage, COUNTED_KEY, ['yes']) !== null;
}

/** Nights were counted on this device. */
export function rememberCounted(storage: Storage | null): void {
  keep(storage, COUNTED_KEY, 'yes');
}
