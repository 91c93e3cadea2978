import { describe, expect, it } from 'vitest';
import { StationRegister } from '../../../analysis/gather/station-register.ts';

const OLD = { id: 'A', name: 'Old', lat: 35.069, lon: -111.972, elevationM: 362 };
const LISTED = { id: 'A', name: 'New', lat: 33.07, lon: -111.97, elevationM: null };

describe('what files and the list say of a station', () => {
  it('is told by the list first, by the file where the list is silent, and said where they lie apart', () => {
    const register = new StationRegister(new Map([['A', LISTED]]));
    register.note(OLD, 'a.wth');
    expect(register.located('A')).toEqual({ ...LISTED, elevationM: 362 });
    // 1.999 degrees of latitude, 111.2 km each on a sphere of 6,371 km.
    expect(register.moved('A')).toBe(
      'Station A: the station list puts it 222 km from where its file says (35.069, -111.972); the list was followed.',
    );
  });

  it('is no news where list and file lie within 5 km', () => {
    const register = new StationRegister(new Map([['A', LISTED]]));
    register.note({ ...OLD, lat: 33.1 }, 'a.wth');
    expect(register.moved('A')).toBeNull();
  });

  it('is put together out of two files, refused where they lie apart, settled by the list', () => {
    const register = new StationRegister(new Map());
    register.note({ ...OLD, elevationM: null }, 'a.wth');
    register.note({ ...OLD, lat: 35.08 }, 'b.wth');
    expect(register.located('A')).toEqual(OLD);
    expect(() => register.note({ ...OLD, lat: 33.07 }, 'c.wth')).toThrow(
      'c.wth: station A lies at 33.07, -111.972 but at 35.069, -111.972 in an earlier file, 222 km away; the limit is 5 km, settle it by a list of stations.',
    );
    const settled = new StationRegister(new Map([['A', LISTED]]));
    settled.note(OLD, 'a.wth');
    settled.note({ ...OLD, lat: 33.07 }, 'c.wth');
    expect(settled.located('A')!.lat).toBe(33.07);
  });

  it('has no place where nobody told its coordinates', () => {
    const register = new StationRegister(new Map());
    register.note({ ...OLD, lat: null, lon: null }, 'a.wth');
    expect(register.located('A')).toBeNull();
  });
});
