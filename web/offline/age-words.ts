import { t } from '../../analysis/language/t.ts';
import { plural } from '../format/numbers.ts';

const DAY_MS = 86_400_000;

/** How long ago something was kept: `today`, `yesterday`, `12 days ago`. `now` in ms since 1970. */
export function ageWords(keptAt: string, now: number): string {
  const days = Math.max(0, Math.floor((now - Date.parse(keptAt)) / DAY_MS));
  if (days === 0) return t`today`;
  if (days === 1) return t`yesterday`;
  return t`${plural(days, t`day`, t`days`)} ago`;
}
