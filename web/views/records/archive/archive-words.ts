import { t } from '../../../../analysis/language/t.ts';
import type { NearbyStation } from '../../../../analysis/archive/stations-nearby.ts';
import type { StationProgress } from '../../../archive/fetch-stations.ts';
import { formatBytes, formatCount, formatElevation, plural } from '../../../format/numbers.ts';
import type { TemperatureUnit } from '../../../format/unit.ts';

/** How long ago something was, in days. */
export function ageWord(iso: string, nowMs = Date.now()): string {
  const days = Math.floor((nowMs - Date.parse(iso)) / 86_400_000);
  return days < 1 ? t`less than a day old` : t`${plural(days, t`day`, t`days`)} old`;
}

/** Where a station lies from the place: `N`, `NE` ... */
export function directionWord(bearing: number): string {
  const words = [t`N`, t`NE`, t`E`, t`SE`, t`S`, t`SW`, t`W`, t`NW`];
  return words[Math.round(bearing / 45) % 8]!;
}

/** Years from first to last: `1948–2024`. */
export function yearsWord(years: readonly [number, number] | null): string {
  return years === null ? t`none` : `${years[0]}–${years[1]}`;
}

/** Height of a station, and how much higher or lower than the place where that is known. */
export function heightWord(station: NearbyStation, placeM: number | null, unit: TemperatureUnit): string {
  const height = formatElevation(station.elevationM, unit);
  if (placeM === null || station.elevationM === null) return height;
  const above = station.elevationM - placeM;
  return t`${height} (${above < 0 ? '' : '+'}${formatElevation(above, unit)})`;
}

/** What the lists can't tell and a record's own days do: the share of days with a minimum from the first year to the last. */
export function completeWord(station: NearbyStation, progress: StationProgress | undefined): string {
  if (progress?.phase !== 'there') return t`not known yet`;
  const days = (station.tmin[1] - station.tmin[0] + 1) * 365.25;
  return t`${formatCount(Math.min(100, Math.floor((100 * progress.tminDays) / days)))}% of days`;
}

/** How far a station's record has come. */
export function progressWord(progress: StationProgress): string {
  switch (progress.phase) {
    case 'waiting':
      return t`waiting`;
    case 'coming':
      return progress.total === null
        ? formatBytes(progress.come)
        : t`${formatBytes(progress.come)} of ${formatBytes(progress.total)}`;
    case 'again':
      return t`${progress.reason}; again in ${formatCount(Math.ceil(progress.waitMs / 1000))} s`;
    case 'there':
      return t`there, ${formatBytes(progress.bytes)}`;
    case 'missing':
      return t`the archive has no record of it; left out`;
    case 'refused':
      return t`left out: ${progress.reason}`;
  }
}

/** What is done of fetching, 0 to 1: by bytes where their number is known or estimated. */
export function fetchedShare(
  stations: readonly NearbyStation[],
  progress: ReadonlyMap<string, StationProgress>,
): number {
  let [come, all] = [0, 0];
  for (const { id, expectedBytes } of stations) {
    const now = progress.get(id);
    if (now?.phase === 'missing' || now?.phase === 'refused') continue;
    const bytes = now?.phase === 'there' ? now.bytes : now && 'come' in now ? now.come : 0;
    const total =
      now?.phase === 'there' ? now.bytes : (now?.phase === 'coming' && now.total) || expectedBytes;
    come += bytes;
    all += Math.max(bytes, total);
  }
  return all === 0 ? 0 : come / all;
}
