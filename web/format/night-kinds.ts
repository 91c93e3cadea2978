import { t } from '../../analysis/language/t.ts';

/** A kind of night in a word, for columns and rows. */
export const KIND_NAMES: Readonly<Record<'calm' | 'windy' | 'unclear', string>> = {
  calm: t`calm`,
  windy: t`windy`,
  unclear: t`unclear`,
};
