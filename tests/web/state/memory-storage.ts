import type { Storage } from '../../../web/state/kept.ts';

/** A browser's storage in memory; `held` is what it keeps. */
export function memoryStorage(
  kept: Readonly<Record<string, string>> = {},
): Storage & { readonly held: Map<string, string> } {
  const held = new Map(Object.entries(kept));
  return {
    held,
    getItem: (key) => held.get(key) ?? null,
    setItem: (key, value) => void held.set(key, value),
    removeItem: (key) => void held.delete(key),
  };
}
