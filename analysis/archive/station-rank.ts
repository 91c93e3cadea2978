/**
 * How late a station is taken: its distance (km) over the square root of its years. Smaller is sooner; a record four
 * times as long may lie twice as far.
 */
export function stationRank(distanceKm: number, years: number): number {
  return distanceKm / Math.sqrt(years);
}
