import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parseColumnMap } from '../../../analysis/read/column-map.ts';
import { degreesOf } from '../../../analysis/read/coordinates.ts';
import { findStation, readStationList } from '../../../analysis/read/station-list.ts';

const columns = (id: string) => {
  const file = join(import.meta.dirname, '..', '..', '..', 'analysis', 'read', 'columns', `${id}.json`);
  return parseColumnMap(readFileSync(file, 'utf8'), `${id}.json`);
};

describe('lists of stations', () => {
  it('id,name,lat,lon,elevation_m', () => {
    const list = readStationList(
      'id,name,lat,lon,elevation_m\nA1,"Hill, top",30.5,-81.25,12\nB,,-33,151,\n',
      's.csv',
    );
    expect([...list.byId.values()]).toEqual([
      { id: 'A1', name: 'Hill, top', lat: 30.5, lon: -81.25, elevationM: 12 },
      { id: 'B', name: '', lat: -33, lon: 151, elevationM: null },
    ]);
  });

  it('the fixed-width list of the archive', () => {
    const line = 'ZZ000060390  36.7167    3.2500   24.0    ANYTOWN-DAR EL X               GSN     60390';
    const list = readStationList(
      `${line}\nZZ000000002 -12.5000 -120.2500 -999.9 XX NOWHERE\n`,
      'ghcnd-stations.txt',
    );
    expect(list.byId.get('ZZ000060390')).toEqual({
      id: 'ZZ000060390',
      name: 'ANYTOWN-DAR EL X',
      lat: 36.7167,
      lon: 3.25,
      elevationM: 24,
    });
    expect(list.byId.get('ZZ000000002')).toMatchObject({ lat: -12.5, lon: -120.25, elevationM: null });
  });

  it('by column map, degrees-minutes-seconds, longitude first', () => {
    const spain = columns('spain-station-list');
    const list = readStationList(
      `${spain.signature!.header}\nZ1;ALTO;P;71;410859N;011044W;08\n`,
      'm.csv',
      null,
      [spain],
    );
    expect(list.byId.get('Z1')).toMatchObject({ name: 'ALTO', elevationM: 71 });
    expect(list.byId.get('Z1')!.lat).toBeCloseTo(41.14972, 5);
    expect(list.byId.get('Z1')!.lon).toBeCloseTo(-1.17889, 5);
    const blanks = readStationList(
      '\n# -130\nZZ1  -64.67  32.37  3.0  -1.0 ISLE,_WI\n',
      'b.txt',
      columns('station-list-lon-first'),
    );
    expect(blanks.byId.get('ZZ1')).toMatchObject({ lat: 32.37, lon: -64.67, elevationM: 3 });
  });

  it('refuse a latitude of 95, conflicting coordinates, missing columns, an empty file', () => {
    expect(() => readStationList('id,lat,lon\nA,95,1\n', 's.csv')).toThrow(
      's.csv, line 2: latitude 95 is beyond 90 degrees.',
    );
    expect(() => readStationList('id,lat,lon\nA,1,-181\n', 's.csv')).toThrow(
      's.csv, line 2: longitude -181 is beyond 180 degrees.',
    );
    expect(() => readStationList('id,lat,lon\nA,north,1\n', 's.csv')).toThrow(
      's.csv, line 2: latitude "north" is not a coordinate.',
    );
    expect(() => readStationList('id,lat,lon\nA,30,1\nA,31,1\n', 's.csv')).toThrow(
      's.csv, line 3: station A stands at 31, 1, but in line 2 at 30, 1.',
    );
    expect(() => readStationList('id,lat,lon\nA,30,1\nA,30.001,1\n', 's.csv')).not.toThrow();
    expect(() => readStationList('id,north,east\nA,30,1\n', 's.csv')).toThrow(
      's.csv, line 1: a list of stations needs the columns id, lat and lon (found id, north, east).',
    );
    expect(() => readStationList('\n', 's.csv')).toThrow('s.csv is empty.');
  });

  it('find stations by id, by id written otherwise, and by file', () => {
    const list = readStationList('file,id,lat,lon\nd/Avon.csv.gz,2444C,30,1\nx,012345-00099,31,2\n', 's.csv');
    expect(findStation(list, '2444C', 'x.csv')!.lat).toBe(30);
    expect(findStation(list, '1234500099', 'y.csv')!.lat).toBe(31);
    expect(findStation(list, 'Avon', 'z/Avon.csv')!.id).toBe('2444C');
    expect(findStation(list, 'Other', 'z/Avon.csv')).toBeNull();
    const two = readStationList('id,lat,lon\n12-3,30,1\n01-23,31,2\n', 's.csv');
    expect(findStation(two, '123', 'y.csv')).toBeNull();
  });

  it('read coordinates of several spellings', () => {
    expect(degreesOf('0034042W', 'lon', 'x')).toBeCloseTo(-3.67833, 5);
    expect(degreesOf('41°17\'34"N', 'lat', 'x')).toBeCloseTo(41.29278, 5);
    expect(degreesOf('-3,5', 'lon', 'x')).toBe(-3.5);
    expect(degreesOf('', 'lon', 'x')).toBeNull();
    expect(() => degreesOf('411734N', 'lon', 'x')).toThrow('is not a coordinate');
    expect(() => degreesOf('416034N', 'lat', 'x')).toThrow('is not a coordinate');
  });
});
