/** Waits; ends with the signal's reason when that ends first. */
export function pause(ms: number, signal?: AbortSignal): Promise<void> {
  return new Promise((done, stopped) => {
    if (signal?.aborted) return stopped(signal.reason as Error);
    const stop = (): void => {
      clearTimeout(timer);
      stopped(signal!.reason as Error);
    };
    const timer = setTimeout(() => {
      signal?.removeEventListener('abort', stop);
      done();
    }, ms);
    signal?.addEventListener('abort', stop, { once: true });
  });
}
