/** Base address of the open bucket that mirrors NOAA's GHCN-Daily archive. */
export const DEFAULT_ARCHIVE = 'https://noaa-ghcn-pds.s3.amazonaws.com/';

/** Metadata of every station, fixed width (format: section IV of the archive's readme). */
export const STATION_LIST = 'ghcnd-stations.txt';

/** First and last year of every station and element, fixed width (section VII of the readme). */
export const INVENTORY = 'ghcnd-inventory.txt';

/** Path in the archive of a station's whole record, one value a line. */
export function recordPath(id: string): string {
  return `csv/by_station/${id}.csv`;
}

/** What a pack made from these files must say about them. */
export const GHCN_DAILY_SOURCE = {
  name: 'NOAA NCEI, Global Historical Climatology Network daily (GHCN-Daily)',
  licence:
    'Open data of a United States government agency (public domain); records of other countries keep the terms their services gave under WMO Resolution 40.',
  attribution:
    'Menne, M. J., I. Durre, R. S. Vose, B. E. Gleason and T. G. Houston, 2012: An overview of the Global Historical Climatology Network-Daily database. J. Atmos. Oceanic Technol., 29, 897-910, doi:10.1175/JTECH-D-11-00103.1. Data: NOAA National Centers for Environmental Information, doi:10.7289/V5D21VHZ.',
} as const;
