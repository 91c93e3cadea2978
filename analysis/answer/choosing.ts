import type { CoverId } from '../cover/cover-ids.ts';
import type { Use } from '../tree/catalogue.ts';

/** What a buyer wants of a tree. */
export interface Wishes {
  readonly kinds: readonly Use[];
  /** Nights a winter they are willing to cover; 0: no cover. */
  readonly nightsToCover: number;
  /** Crops of ten they can bear to lose. */
  readonly lostCropsInTen: number;
  /** Years they will wait for the first crop. */
  readonly yearsToWait: number;
  /** Trees of ten that should live ten years. */
  readonly livingInTen: number;
}

/** One way of growing a type: where it stands and what is put over it. */
export interface Way {
  /** `null`: the spot chosen on the page. */
  readonly spotId: string | null;
  readonly covers: readonly CoverId[];
}

/** A wish, what the type offers, and whether that is enough. */
export interface WishMet {
  readonly wish: 'nightsToCover' | 'lostCropsInTen' | 'yearsToWait' | 'livingInTen';
  readonly wanted: number;
  readonly offered: number | null;
  readonly met: boolean;
  /** The rule in words, with both numbers. */
  readonly rule: string;
}

export interface Choice {
  readonly typeId: string;
  readonly name: string;
  readonly way: Way;
  readonly wishes: readonly WishMet[];
  /** For those that nearly do: what would close the gap, `null`: nothing tried does. */
  readonly closing: { readonly way: Way; readonly words: string; readonly wishes: readonly WishMet[] } | null;
}

/** Two types that don't fail in the same winters and don't ripen at once. */
export interface Pair {
  /** The one whose harvest comes first in the winter's count of days first. */
  readonly typeIds: readonly [string, string];
  /** Share of winters that take both crops, and the share if they failed independently. */
  readonly bothLost: number;
  readonly ifIndependent: number;
  readonly harvest: string;
  readonly rule: string;
}

export interface Chosen {
  readonly meet: readonly Choice[];
  readonly nearly: readonly Choice[];
  /** Types that miss more than one wish, or miss one by far, with the wish that stops them. */
  readonly not: readonly { readonly typeId: string; readonly name: string; readonly rule: string }[];
  readonly pairs: readonly Pair[];
}
