import type { Ranking } from '../../../analysis/answer/assessment.ts';
import { lengthNotes } from '../../../analysis/answer/length-notes.ts';
import { t } from '../../../analysis/language/t.ts';
import type { PackStation } from '../../../analysis/records/pack.ts';
import { countedWinters, isEstimated } from '../../format/estimated.ts';
import { formatChance, formatDistance, formatElevation } from '../../format/numbers.ts';
import type { TemperatureUnit } from '../../format/unit.ts';
import type { ResolvedPlace } from '../../state/resolve-place.ts';

/** Below these the page says so beside the answer (design 3.5). */
const FIT_WINTERS = 20;
const STEADY_WINTERS = 30;

/** What a reader must know about the number of winters; none when there is nothing to warn of. */
export function winterWarnings(winters: number, estimated: boolean): readonly string[] {
  if (winters === 0) {
    return estimated
      ? [t`No station around has a complete winter, so nothing can be told here.`]
      : [t`No winter of this station is complete, so nothing can be counted here.`];
  }
  const counted = countedWinters(winters, estimated);
  if (winters < FIT_WINTERS)
    return [t`Only ${counted}: too few for a curve, so the answer is a plain count with a wide range.`];
  if (winters < STEADY_WINTERS)
    return [t`${counted} are few: a curve through them can be far off for rare cold.`];
  return [];
}

/** A station behind an estimate, as it is listed. */
export interface EvidenceLine {
  readonly id: string;
  readonly name: string;
  /** `38%, 4.1 mi away`. */
  readonly words: string;
}

/** The stations behind an answer, heaviest first. */
export function evidenceLines(
  { evidence }: Pick<Ranking, 'evidence'>,
  stations: readonly PackStation[],
  unit: TemperatureUnit,
): readonly EvidenceLine[] {
  return evidence.map(({ id, weight, distanceKm }) => ({
    id,
    name: stations.find((station) => station.id === id)?.name ?? id,
    words: t`${formatChance(weight)} of the weight, ${formatDistance(distanceKm, unit)} away`,
  }));
}

/** `12 stations around, most from Ewerbridge (38%, 4.1 mi away)`. */
export function evidenceWords(
  { evidence }: Pick<Ranking, 'evidence'>,
  stations: readonly PackStation[],
  unit: TemperatureUnit,
): string {
  const [first] = evidence;
  const name = stations.find(({ id }) => id === first.id)?.name ?? first.id;
  const distance = formatDistance(first.distanceKm, unit);
  if (evidence.length === 1) return t`one station, ${name}, ${distance} away`;
  return t`${evidence.length} stations around, most from ${name} (${formatChance(first.weight)}, ${distance} away)`;
}

/** The height an estimate was made for and who said so. */
export function heightWords(told: Ranking, { request }: ResolvedPlace, unit: TemperatureUnit): string {
  const height = told.place.elevation_m;
  if (height === null) return t`not known: taken as the mean of the stations`;
  const given = request.by === 'point' && request.elevationM !== null;
  const written = formatElevation(height, unit);
  return given ? t`${written}, as you say` : t`${written}, by the pack’s grid of heights`;
}

/** As much of an answer as its notes are chosen by. */
type NotesTold = Pick<Ranking, 'notes' | 'place' | 'winters'>;

/**
 * Sentences of the answer that the panel doesn't tell in its own lines, with distances and heights in the reader's unit:
 * without the first of an estimate, which says from where, and without those about the number of winters.
 */
export function noteSentences(told: NotesTold, unit: TemperatureUnit): readonly string[] {
  const { used } = told.winters;
  const ofLength = lengthNotes(
    used,
    used < FIT_WINTERS ? 'counts only' : used < STEADY_WINTERS ? 'short' : 'enough',
  );
  return told.notes
    .filter((note) => !ofLength.includes(note))
    .flatMap((note) => note.split(/(?<=[.:]) (?=\p{Lu})/u))
    .slice(isEstimated(told) ? 1 : 0)
    .map((sentence) =>
      sentence
        .replaceAll("'", '’')
        .replace(/(\d+(?:\.\d+)?) km\b/g, (_, km: string) => formatDistance(Number(km), unit))
        .replace(/(-?\d+) m\b/g, (_, m: string) => formatElevation(Number(m), unit)),
    );
}
