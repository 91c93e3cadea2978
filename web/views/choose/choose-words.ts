import { wayWords } from '../../../analysis/answer/choose-ways.ts';
import type { Chosen, Way, WishMet } from '../../../analysis/answer/choosing.ts';
import type { CoverId } from '../../../analysis/cover/cover-ids.ts';
import { findMeasure } from '../../../analysis/cover/measures.ts';
import { t } from '../../../analysis/language/t.ts';
import { findNamedSpot } from '../../../analysis/spot/named-spots.ts';
import { plural } from '../../format/numbers.ts';

/** Wishes in the order they are shown, and their headings. */
export const WISH_HEADINGS: readonly { readonly wish: WishMet['wish']; readonly heading: string }[] = [
  { wish: 'livingInTen', heading: t`Trees that live` },
  { wish: 'lostCropsInTen', heading: t`Crops lost` },
  { wish: 'yearsToWait', heading: t`First crop` },
  { wish: 'nightsToCover', heading: t`Nights covered` },
];

/** The wishes of a choice in the order shown. */
export function inOrder(wishes: readonly WishMet[]): readonly WishMet[] {
  return WISH_HEADINGS.flatMap(({ wish }) => wishes.find((one) => one.wish === wish) ?? []);
}

/** What came of it in one sentence. */
export function chosenSentence({ meet, nearly, not }: Chosen, place: string): string {
  const all = plural(meet.length + nearly.length + not.length, t`kind`, t`kinds`);
  const near = nearly.length === 1 ? t`1 nearly does` : t`${nearly.length} nearly do`;
  if (meet.length === 0)
    return nearly.length === 0
      ? t`Of ${all}, none at ${place} meets all that you want, nor nearly.`
      : t`Of ${all}, none at ${place} meets all that you want, but ${near}.`;
  const met =
    meet.length === 1
      ? t`1 at ${place} meets all that you want`
      : t`${meet.length} at ${place} meet all that you want`;
  return nearly.length === 0 ? t`Of ${all}, ${met}.` : t`Of ${all}, ${met} and ${near}.`;
}

/** True for the way that is set on the page. */
export function isPageWay({ spotId, covers }: Way, pageCovers: readonly CoverId[]): boolean {
  return (
    spotId === null && covers.length === pageCovers.length && covers.every((id) => pageCovers.includes(id))
  );
}

/** How a way differs from what is set on the page, as a sentence under the type's name. */
export function waySentence(way: Way, pageCovers: readonly CoverId[]): string {
  const covered = pageCovers.some((id) => findMeasure(id));
  if (isPageWay(way, pageCovers))
    return covered ? t`Under the cover chosen above.` : t`As it stands, without a cover.`;
  if (way.spotId === null && way.covers.length === 0) return t`Without the cover chosen above.`;
  const words = wayWords(way);
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
}

/** What the button that sets a way says. */
export function useWords({ spotId, covers }: Way): string {
  if (spotId === null) return covers.length === 0 ? t`Take the cover off` : t`Use this cover`;
  return covers.length === 0 ? t`Use this spot` : t`Use this spot and cover`;
}

/** What stands where no two of them make a pair. */
export const NO_PAIR = t`No two of these spread both the risk and the harvest: they ripen in the same months, or whatever takes the one takes the other too.`;

/** Covers of all ways told of, each once. */
export function coversTold({ meet, nearly }: Chosen): readonly CoverId[] {
  return [...new Set(waysTold({ meet, nearly }).flatMap(({ covers }) => covers))];
}

/** How well the degrees of the spots told of are known, a sentence each. */
export function spotCautions({ meet, nearly }: Chosen): readonly string[] {
  const ids = new Set(waysTold({ meet, nearly }).flatMap(({ spotId }) => spotId ?? []));
  return [...ids].flatMap((id) => {
    const spot = findNamedSpot(id);
    return spot ? [`${spot.name}: ${spot.about}`] : [];
  });
}

function waysTold({ meet, nearly }: Pick<Chosen, 'meet' | 'nearly'>): readonly Way[] {
  return [...meet, ...nearly].flatMap(({ way, closing }) => (closing ? [way, closing.way] : [way]));
}
