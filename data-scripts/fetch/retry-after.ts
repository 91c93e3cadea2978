/** Wait that a `Retry-After` header asks for, ms: seconds or a date of HTTP; undefined where it says neither. */
export function retryAfterMs(header: string | undefined, nowMs = Date.now()): number | undefined {
  if (header === undefined) return undefined;
  if (/^\d+$/.test(header)) return Number(header) * 1000;
  const date = Date.parse(header);
  return Number.isNaN(date) ? undefined : Math.max(0, date - nowMs);
}
