import type { Ranking } from '../../../analysis/answer/assessment.ts';
import type { PackStation } from '../../../analysis/records/pack.ts';
import { formatChance, formatDistance, formatElevation, plural } from '../../format/numbers.ts';
import type { TemperatureUnit } from '../../format/unit.ts';
import type { ResolvedPlace } from '../../state/resolve-place.ts';

/** Below these the page says so beside the answer (design 3.5). */
const FIT_WINTERS = 20;
const STEADY_WINTERS = 30;

/** What a reader must know about the number of winters; none when there is nothing to warn of. */
export function winterWarnings(winters: number, estimated: boolean): readonly string[] {
  if (winters === 0) {
    return estimated
      ? ['No station around has a complete winter, so nothing can be told here.']
      : ['No winter of this station is complete, so nothing can be counted here.'];
  }
  const noun = estimated ? 'estimated winter' : 'complete winter';
  if (winters < FIT_WINTERS)
    return [
      `Only ${plural(winters, noun)}: too few for a curve, so the answer is a plain count with a wide range.`,
    ];
  if (winters < STEADY_WINTERS)
    return [`${plural(winters, noun)} are few: a curve through them can be far off for rare cold.`];
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
    words: `${formatChance(weight)} of the weight, ${formatDistance(distanceKm, unit)} away`,
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
  const away = `${formatDistance(first.distanceKm, unit)} away`;
  if (evidence.length === 1) return `one station, ${name}, ${away}`;
  return `${evidence.length} stations around, most from ${name} (${formatChance(first.weight)}, ${away})`;
}

/** The height an estimate was made for and who said so. */
export function heightWords(told: Ranking, { request }: ResolvedPlace, unit: TemperatureUnit): string {
  const height = told.place.elevation_m;
  if (height === null) return 'not known: taken as the mean of the stations';
  const given = request.by === 'point' && request.elevationM !== null;
  return `${formatElevation(height, unit)}, ${given ? 'as you say' : 'by the pack’s grid of heights'}`;
}

/** Sentences of the answer that the panel doesn't tell in its own lines, with distances and heights in the reader's unit. */
export function noteSentences(notes: readonly string[], unit: TemperatureUnit): readonly string[] {
  return notes
    .flatMap((note) => note.split(/(?<=[.:]) (?=[A-Z])/))
    .filter((sentence) => !/^These winters are estimated from|^Only \d+ complete winters/.test(sentence))
    .map((sentence) =>
      sentence
        .replaceAll("'", '’')
        .replace(/(\d+(?:\.\d+)?) km\b/g, (_, km: string) => formatDistance(Number(km), unit))
        .replace(/(-?\d+) m\b/g, (_, m: string) => formatElevation(Number(m), unit)),
    );
}
