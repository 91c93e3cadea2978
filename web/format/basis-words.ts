import { t } from '../../analysis/language/t.ts';
import type { Basis } from '../../analysis/tree/catalogue.ts';

/** How well a figure is known. */
export const BASIS_WORDS: Readonly<Record<Basis, string>> = {
  found: t`found in a source`,
  memory: t`recalled from a source, not looked up`,
  inferred: t`worked out from sources`,
  practice: t`common practice, no source`,
};

/** The same in a word, for cells and brackets. */
export const BASIS_NAMES: Readonly<Record<Basis, string>> = {
  found: t`found`,
  memory: t`memory`,
  inferred: t`inferred`,
  practice: t`practice`,
};
