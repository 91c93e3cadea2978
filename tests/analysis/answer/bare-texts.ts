import type { ProtectionTexts } from '../../../analysis/answer/protection.ts';

/** A tree in the ground, in the open and uncovered, north of the equator. */
export const BARE_TEXTS: ProtectionTexts = {
  spot: null,
  yard: null,
  measured: null,
  cover: null,
  hemisphere: 'north',
  container: false,
};
