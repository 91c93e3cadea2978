import type { Protection, ProtectionTexts } from '../../analysis/answer/protection.ts';
import { NO_LEVEL_GAIN_SPREADS } from '../../analysis/tree/level-gains.ts';

/** What a question's spot and cover come to. */
export type Gained = Pick<Protection, 'gains' | 'words' | 'problems'>;

const NONE: Gained = { gains: NO_LEVEL_GAIN_SPREADS, words: '', problems: [] };

let last: { readonly key: string; readonly gained: Promise<Gained> } | null = null;

/** The code that reads spots and covers comes with the first question that has one; the last answer is kept. */
export function protectionOf(texts: ProtectionTexts | null): Promise<Gained> {
  if (texts === null) return Promise.resolve(NONE);
  const key = JSON.stringify(texts);
  if (last?.key === key) return last.gained;
  const gained = import('../../analysis/answer/protection.ts').then(({ readProtection }) =>
    readProtection(texts),
  );
  last = { key, gained };
  gained.catch(() => (last = null));
  return gained;
}
