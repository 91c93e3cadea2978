import { stationRecords } from '../../data-scripts/demo/station-records.ts';
import { dailyText } from '../../data-scripts/demo/write-daily.ts';
import { inventedStation, type InventedStation } from '../data-scripts/fetch/invented-stations.ts';

/** Invented weather of 28 winters; a year more than the shortest record that the index takes. */
const SPAN = { seed: 143, firstWinter: 1998, lastWinter: 2025 } as const;

/**
 * The first stations of the invented region as the archive would list and write them, under ids that exist nowhere, and one
 * too short to be of use.
 */
export function mirroredStations(count: number): readonly InventedStation[] {
  const mirrored: InventedStation[] = [];
  for (const record of stationRecords(SPAN)) {
    const { id, name, lat, lon } = record.station;
    const listed = { id, name: name.toUpperCase(), lat, lon, elevation: record.site.elevationM.toFixed(1) };
    const { listLine, inventory } = inventedStation({ ...listed, tmin: [1997, 2025] });
    const text = dailyText({ ...record, station: { ...record.station, daily: 'long' } });
    mirrored.push({ id, listLine, inventory, record: text });
    if (mirrored.length === count) break;
  }
  const [first] = mirrored;
  const short = inventedStation({ id: 'ZZ000000099', lat: 31, lon: -42, name: 'SHORT', tmin: [2010, 2025] });
  return [...mirrored, { ...short, record: first!.record }];
}
