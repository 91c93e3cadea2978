import { MISSING_HUNDREDTHS } from '../records/nights.ts';
import type { Level } from './levels.ts';

/** What a night can take from a living tree: bloom or new growth, and the four levels. */
export const LOSSES = ['flush', 'fruit', 'leaf', 'wood', 'kill'] as const;
export type Loss = 'flush' | Level;

/** How hardening is read: counted night by night, or every tree taken as hardened. The colder reading comes first. */
export const READINGS = ['night_by_night', 'hardened'] as const;
export type Reading = (typeof READINGS)[number];

/** First year since planting of each class of ages that the age penalty tells apart: see `penaltiesAt`. */
export const AGE_CLASS_FROM = [0, 3, 4, 6] as const;

/** Class of a tree's years since planting, an index into {@link AGE_CLASS_FROM}. */
export function ageClassOf(ageYears: number): number {
  return ageYears > 5 ? 3 : ageYears > 3 ? 2 : ageYears > 2 ? 1 : 0;
}

/** A tree as a winter meets it. */
export interface TreeInWinter {
  readonly reading: Reading;
  readonly ageClass: number;
  /** Carries a crop that hangs until it is picked. */
  readonly bearing: boolean;
}

/**
 * How far each winter's worst night went below what takes each loss from a tree of one type, spot and cover, hundredths of
 * °C: 0 or more is a hit, {@link MISSING_HUNDREDTHS} where no night is known to come near. Air colder by `x` raises every
 * margin by `x`, so errors of the air and of thresholds need no second look at the nights.
 */
export interface WinterMargins {
  /** Labels and completeness, as in the winters the margins were made of. */
  readonly winter: Int16Array;
  readonly complete: Uint8Array;
  /** One block a winter; within it by reading, age class, bearing (no, yes) and loss. See {@link marginIndex}. */
  readonly margins: Int16Array;
}

const AGES = AGE_CLASS_FROM.length;
/** Margins of one winter. */
export const MARGINS_A_WINTER = READINGS.length * AGES * 2 * LOSSES.length;

/** Where the first loss of a tree in a winter's block stands; the others follow in the order of {@link LOSSES}. */
export function marginIndex(winter: number, { reading, ageClass, bearing }: TreeInWinter): number {
  const tree = (READINGS.indexOf(reading) * AGES + ageClass) * 2 + (bearing ? 1 : 0);
  return winter * MARGINS_A_WINTER + tree * LOSSES.length;
}

/** Whether a margin, raised by `colder` hundredths of °C, is a hit. */
export function isHit(margin: number, colder = 0): boolean {
  return margin !== MISSING_HUNDREDTHS && margin + colder >= 0;
}
