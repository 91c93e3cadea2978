import { t } from '../../../analysis/language/t.ts';

/** Reasons as packs tell them, which are the same for readers of every language (`analysis/clean`). */
const REASONS: Readonly<Record<string, string>> = {
  spike: t`spike`,
  'out of season': t`out of season`,
  'zero for missing': t`zero for missing`,
  'beyond world records': t`beyond world records`,
  'conflicting repeat': t`conflicting repeat`,
  'stuck value': t`stuck value`,
  'copied days': t`copied days`,
  'minimum above maximum': t`minimum above maximum`,
  'maximum of the day before': t`maximum of the day before`,
  'minimum booked twice': t`minimum booked twice`,
};

/** What the sources' own flags mean. */
const FLAGS: Readonly<Record<string, string>> = {
  'duplicate check': t`duplicate check`,
  'gap check': t`gap check`,
  'internal consistency': t`internal consistency`,
  'streak or frequent value': t`streak or frequent value`,
  'length of a multiday period': t`length of a multiday period`,
  megaconsistency: t`megaconsistency`,
  'naught check': t`naught check`,
  'climatological outlier': t`climatological outlier`,
  'lagged range': t`lagged range`,
  'spatial consistency': t`spatial consistency`,
  'temporal consistency': t`temporal consistency`,
  'too warm for snow': t`too warm for snow`,
  bounds: t`bounds`,
  'official investigation': t`official investigation`,
  'marked suspect': t`marked suspect`,
};

const FLAG = /^source flag (\S+)(?: \((.+)\))?$/;

/** Why values were taken out or doubted, in the language of the page; a reason that isn't known is told as it is. */
export function reasonWords(reason: string): string {
  const flag = FLAG.exec(reason);
  if (!flag) return REASONS[reason] ?? reason;
  const [, letter, meaning] = flag;
  if (meaning === undefined) return t`source flag ${letter}`;
  return t`source flag ${letter} (${FLAGS[meaning] ?? meaning})`;
}
