/** The browser's storage, `null` where it refuses. */
export function openStorage(): globalThis.Storage | null {
  try {
    return window.localStorage;
  } catch {
    return null;
  }
}
