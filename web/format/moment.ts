import { formatDay } from './dates.ts';

/** A moment in the reader's own time: `26 Nov 2025, 14:05`. Takes ms since 1970. */
export function formatMoment(atMs: number): string {
  const at = new Date(atMs);
  const two = (value: number): string => String(value).padStart(2, '0');
  const day = formatDay(`${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`, 'short');
  return `${day}, ${two(at.getHours())}:${two(at.getMinutes())}`;
}
