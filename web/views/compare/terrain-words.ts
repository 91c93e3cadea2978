import { t } from '../../../analysis/language/t.ts';
import { formatDistance, formatElevation } from '../../format/numbers.ts';
import type { TemperatureUnit } from '../../format/unit.ts';

/** Where a place lies, as far as cold depends on it; unknown is `null`. */
export interface Ground {
  readonly elevationM: number | null;
  readonly coastKm: number | null;
}

/** Smaller differences than these are not worth a word. */
const TOLD_M = 10;
const TOLD_KM = 1;

/** One way in which a place differs from another. */
interface Difference {
  readonly words: string;
  /** True when it goes with colder winters: higher, farther from the sea. */
  readonly colder: boolean;
}

function differences(place: Ground, from: Ground, unit: TemperatureUnit): readonly Difference[] {
  const found: Difference[] = [];
  const higherM =
    place.elevationM === null || from.elevationM === null ? 0 : place.elevationM - from.elevationM;
  if (Math.abs(higherM) >= TOLD_M) {
    const size = formatElevation(Math.abs(higherM), unit);
    found.push({ words: higherM > 0 ? t`${size} higher` : t`${size} lower`, colder: higherM > 0 });
  }
  const fartherKm = place.coastKm === null || from.coastKm === null ? 0 : place.coastKm - from.coastKm;
  if (Math.abs(fartherKm) >= TOLD_KM) {
    const size = formatDistance(Math.abs(fartherKm), unit);
    found.push({
      words: fartherKm > 0 ? t`${size} farther inland` : t`${size} nearer the sea`,
      colder: fartherKm > 0,
    });
  }
  return found;
}

/** `340 ft higher, 4.1 mi farther inland`; `''` when the ground differs little or isn't known. */
export function groundWords(place: Ground, from: Ground, unit: TemperatureUnit): string {
  return differences(place, from, unit)
    .map(({ words }) => words)
    .join(', ');
}

/** Why one place is colder than another as far as the ground tells; what speaks against it is told as well. */
export function reasonWords(
  colder: Ground & { readonly name: string },
  milder: Ground & { readonly name: string },
  unit: TemperatureUnit,
): string {
  const all = differences(colder, milder, unit);
  const words = ([first, second]: readonly Difference[]): string =>
    second === undefined ? first.words : t`${first.words} and ${second.words}`;
  const [reasons, contrary] = [all.filter((entry) => entry.colder), all.filter((entry) => !entry.colder)];
  if (all.length === 0) {
    const known = [colder, milder].every(
      ({ elevationM, coastKm }) => elevationM !== null && coastKm !== null,
    );
    return known
      ? t`The ground of ${colder.name} and ${milder.name} differs little in height and distance from the sea; the stations around them do.`
      : t`How the ground of ${colder.name} and ${milder.name} differs isn’t known in full.`;
  }
  if (reasons.length === 0)
    return t`${colder.name} lies ${words(contrary)} than ${milder.name}, which alone would make it milder: cold air that gathers in low ground, or the stations around, outweigh it.`;
  const told =
    contrary.length > 0
      ? t`${colder.name} lies ${words(reasons)} than ${milder.name}, though ${words(contrary)}.`
      : t`${colder.name} lies ${words(reasons)} than ${milder.name}.`;
  const heightsKnown = colder.elevationM !== null && milder.elevationM !== null;
  return heightsKnown ? told : `${told} ${t`How high they lie isn’t known to this pack.`}`;
}
