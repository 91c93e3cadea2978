import type { Basis } from '../../analysis/tree/catalogue.ts';

/** How well a figure is known. */
export const BASIS_WORDS: Readonly<Record<Basis, string>> = {
  found: 'found in a source',
  memory: 'recalled from a source, not looked up',
  inferred: 'worked out from sources',
  practice: 'common practice, no source',
};
