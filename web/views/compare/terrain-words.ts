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
    found.push({ words: `${size} ${higherM > 0 ? 'higher' : 'lower'}`, colder: higherM > 0 });
  }
  const fartherKm = place.coastKm === null || from.coastKm === null ? 0 : place.coastKm - from.coastKm;
  if (Math.abs(fartherKm) >= TOLD_KM) {
    const size = formatDistance(Math.abs(fartherKm), unit);
    found.push({
      words: fartherKm > 0 ? `${size} farther inland` : `${size} nearer the sea`,
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
  const words = (list: readonly Difference[]): string => list.map((entry) => entry.words).join(' and ');
  const [reasons, contrary] = [all.filter((entry) => entry.colder), all.filter((entry) => !entry.colder)];
  const heightUnknown =
    colder.elevationM === null || milder.elevationM === null
      ? ' How high they lie isn’t known to this pack.'
      : '';
  if (all.length === 0) {
    const known = [colder, milder].every(
      ({ elevationM, coastKm }) => elevationM !== null && coastKm !== null,
    );
    return known
      ? `The ground of ${colder.name} and ${milder.name} differs little in height and distance from the sea; the stations around them do.`
      : `How the ground of ${colder.name} and ${milder.name} differs isn’t known in full.`;
  }
  if (reasons.length === 0)
    return `${colder.name} lies ${words(contrary)} than ${milder.name}, which alone would make it milder: cold air that gathers in low ground, or the stations around, outweigh it.`;
  const though = contrary.length > 0 ? `, though ${words(contrary)}` : '';
  return `${colder.name} lies ${words(reasons)} than ${milder.name}${though}.${heightUnknown}`;
}
