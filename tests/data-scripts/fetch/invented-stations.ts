/** A station of the invented archive, as its three files describe it. */
export interface InventedStation {
  readonly id: string;
  readonly listLine: string;
  /** Lines of the inventory, each with its line end. */
  readonly inventory: string;
  readonly record: string;
}

interface Description {
  readonly id: string;
  readonly lat: number;
  readonly lon: number;
  readonly elevation?: string;
  readonly name: string;
  readonly tmin?: [first: number, last: number];
  readonly tmax?: [first: number, last: number];
  readonly days?: number;
}

/**
 * Mid-ocean stations that exist nowhere. Columns are those of the archive's readme: sections IV and VII. The record
 * has the documented header and one value a line.
 */
export function inventedStation(description: Description): InventedStation {
  const {
    id,
    lat,
    lon,
    elevation = '12.5',
    name,
    tmin = [1950, 2020],
    tmax = tmin,
    days = 400,
  } = description;
  const at = `${lat.toFixed(4).padStart(8)} ${lon.toFixed(4).padStart(9)}`;
  const years = (element: string, [first, last]: [number, number]): string =>
    `${id} ${at} ${element} ${first} ${last}\n`;
  return {
    id,
    listLine: `${id} ${at} ${elevation.padStart(6)}    ${name.padEnd(30)} GSN     00000`,
    inventory: years('TMAX', tmax) + years('TMIN', tmin) + years('PRCP', [1900, 2024]),
    record: recordText(id, days),
  };
}

function recordText(id: string, days: number): string {
  const lines = ['ID,DATE,ELEMENT,DATA_VALUE,M_FLAG,Q_FLAG,S_FLAG,OBS_TIME'];
  for (let day = 0; day < days; day++) {
    const date = new Date(Date.UTC(2000, 0, 1 + day)).toISOString().slice(0, 10).replaceAll('-', '');
    lines.push(
      `${id},${date},TMAX,${150 + (day % 90)},,,7,0700`,
      `${id},${date},TMIN,${(day % 90) - 20},,,7,0700`,
    );
  }
  return `${lines.join('\n')}\n`;
}

/** Around 31 N, 42 W: three near and long, one short, one without maxima, one far away. */
export const INVENTED_STATIONS = [
  inventedStation({ id: 'ZZ000000001', lat: 31, lon: -42, name: 'TERN POINT' }),
  inventedStation({
    id: 'ZZ000000002',
    lat: 31.2,
    lon: -42.1,
    name: 'EWER, UPPER WEIR',
    elevation: '-999.9',
  }),
  inventedStation({
    id: 'ZZ000000003',
    lat: 30.8,
    lon: -41.7,
    name: 'CORROW',
    tmin: [1990, 2020],
    tmax: [2001, 2024],
  }),
  inventedStation({ id: 'ZZ000000004', lat: 31.01, lon: -42.01, name: 'SHORT', tmin: [2010, 2020] }),
  inventedStation({
    id: 'ZZ000000005',
    lat: 31.02,
    lon: -42,
    name: 'APART',
    tmin: [1920, 1960],
    tmax: [1950, 2020],
  }),
  inventedStation({ id: 'ZZ000000006', lat: 38, lon: -30, name: 'FAR' }),
];
