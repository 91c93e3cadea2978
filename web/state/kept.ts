/** The part of the browser's storage this needs. It may be missing or refuse (private windows): then nothing is kept. */
export interface Storage {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
  removeItem(key: string): void;
}

/** Read one of `allowed`, or `null` when nothing sensible is kept. */
export function readKept<T extends string>(
  storage: Storage | null,
  key: string,
  allowed: readonly T[],
): T | null {
  try {
    const text = storage?.getItem(key) ?? null;
    return allowed.find((entry) => entry === text) ?? null;
  } catch {
    return null;
  }
}

/** Keep a value, or forget it with `null`. A storage that refuses is no error: the choice lasts for this visit. */
export function keep(storage: Storage | null, key: string, value: string | null): void {
  try {
    if (value === null) storage?.removeItem(key);
    else storage?.setItem(key, value);
  } catch {
    return;
  }
}
