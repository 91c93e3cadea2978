import type { ResolvedPlace } from '../../state/resolve-place.ts';
import { formatWinter } from '../../format/dates.ts';
import { formatDistance, plural } from '../../format/numbers.ts';
import type { TemperatureUnit } from '../../format/unit.ts';

/** Below these the page says so beside the answer (design 3.5). */
const FIT_WINTERS = 20;
const STEADY_WINTERS = 30;
/** From this distance on a station speaks for another spot, km. */
const FAR_KM = 15;

/** `61 complete winters, 1951–52 to 2023–24`. */
export function recordWords(
  winters: { readonly complete: number; readonly first: number | null; readonly last: number | null },
  hemisphere: 'north' | 'south',
): string {
  const count = plural(winters.complete, 'complete winter');
  if (winters.first === null || winters.last === null) return count;
  return `${count}, ${formatWinter(winters.first, hemisphere)} to ${formatWinter(winters.last, hemisphere)}`;
}

/** What a reader must know about the evidence, most important first; none when there is nothing to warn of. */
export function evidenceWarnings(place: ResolvedPlace, unit: TemperatureUnit): readonly string[] {
  const { station, distanceKm, kind } = place;
  const winters = station.winters.complete;
  const warnings: string[] = [];
  if (winters === 0) {
    warnings.push('No winter of this station is complete, so nothing can be counted here.');
  } else if (winters < FIT_WINTERS) {
    warnings.push(
      `Only ${plural(winters, 'complete winter')}: too few for a curve, so the answer is a plain count with a wide range.`,
    );
  } else if (winters < STEADY_WINTERS) {
    warnings.push(`${winters} complete winters are few: a curve through them can be far off for rare cold.`);
  }
  if (kind !== 'station' && distanceKm >= FAR_KM) {
    warnings.push(
      `The station is ${formatDistance(distanceKm, unit)} away; hills, water and town between them change the cold.`,
    );
  }
  const nearest = place.nearby[0];
  if (kind !== 'station' && nearest && nearest.station.id !== station.id) {
    warnings.push(
      `${nearest.station.name} is nearer (${formatDistance(nearest.distanceKm, unit)}) but has only ${plural(nearest.station.winters.complete, 'complete winter')}.`,
    );
  }
  return warnings;
}
