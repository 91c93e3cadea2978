import { t } from '../../../../analysis/language/t.ts';
import type { LocatedStation } from '../../../../analysis/records/station.ts';
import { ELEVATION_MAX_M, ELEVATION_MIN_M } from '../../../state/chosen.ts';

/** A station's place as typed, or a sentence about what is wrong with it. A comma counts as a decimal point. */
export function placeTyped(
  id: string,
  typed: { readonly name: string; readonly lat: string; readonly lon: string; readonly height: string },
): { readonly station: LocatedStation } | { readonly problem: string } {
  const number = (text: string): number =>
    text.trim() === '' ? NaN : Number(text.trim().replace(',', '.').replace('\u2212', '-'));
  const [lat, lon] = [number(typed.lat), number(typed.lon)];
  if (!(Math.abs(lat) <= 90))
    return { problem: t`The latitude “${typed.lat}” is not a number from -90 to 90.` };
  if (!(Math.abs(lon) <= 180))
    return { problem: t`The longitude “${typed.lon}” is not a number from -180 to 180.` };
  const elevationM = typed.height.trim() === '' ? null : number(typed.height);
  if (elevationM !== null && !(elevationM >= ELEVATION_MIN_M && elevationM <= ELEVATION_MAX_M))
    return {
      problem: t`The height “${typed.height}” is not a number from ${ELEVATION_MIN_M} to ${ELEVATION_MAX_M} m.`,
    };
  return { station: { id, name: typed.name.trim(), lat, lon, elevationM } };
}
