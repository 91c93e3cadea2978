import { NOTHING_CHOSEN, type ProtectionTexts } from '../../../analysis/answer/protection.ts';

/** A tree in the ground, in the open and uncovered, north of the equator. */
export const BARE_TEXTS: ProtectionTexts = { ...NOTHING_CHOSEN, hemisphere: 'north', container: false };
