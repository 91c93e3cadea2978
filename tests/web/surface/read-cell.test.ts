import { describe, expect, it } from 'vitest';
import { legendOf } from '../../../web/surface/legend.ts';
import { cellBeside, readCell } from '../../../web/surface/read-cell.ts';
import { madeSurface } from './made-surface.ts';

const names = { first: 'Yuzu', second: 'Pummelo', against: 'against Pummelo' };
/** 0.1° of latitude is 11.12 km on a sphere of 6371 km: 6.9 miles. */
const stations = [
  { id: 'A', name: 'Harbour', lat: 31.1, lon: -42, winters: { complete: 60 } },
  { id: 'B', name: 'New Field', lat: 31, lon: -42, winters: { complete: 2 } },
];
const at = { lat: 31, lon: -42 };

describe('the readout', () => {
  it('tells the period and the nearest station that takes part, in the unit of the page', () => {
    const view = { mode: 'periods', surface: madeSurface(2, 2, () => 12.3) } as const;
    const read = readCell(view, names, at, stations, 'C')!;
    expect(read.lines).toEqual(['about 1 winter in 12']);
    expect(read.source).toBe('estimated; nearest station Harbour, 11\u00a0km');
    expect(readCell(view, names, at, stations, 'F')!.source).toContain('6.9\u00a0mi');
  });
  it('never claims more than twice the winters', () => {
    const view = { mode: 'periods', surface: madeSurface(1, 1, () => Infinity, 138) } as const;
    expect(readCell(view, names, at, stations, 'F')!.lines).toEqual(['rarer than about 1 winter in 140']);
  });
  it('says how far the nearest station is where there is no answer', () => {
    const view = { mode: 'periods', surface: madeSurface(1, 1, () => 'far') } as const;
    expect(readCell(view, names, at, stations, 'C')!.lines).toEqual([
      'no answer: 11\u00a0km from the nearest long record',
    ]);
    expect(readCell(view, names, at, [stations[1]], 'C')!.lines).toEqual([
      'no answer: no station has a long record',
    ]);
  });
  it('is silent on the open sea and off the cells', () => {
    const view = { mode: 'periods', surface: madeSurface(9, 9, (c) => (c === 0 ? 5 : 'sea')) } as const;
    expect(readCell(view, names, { lat: 31.4, lon: -41.3 }, stations, 'F')).toBeNull();
    expect(readCell(view, names, { lat: 40, lon: -42 }, stations, 'F')).toBeNull();
  });
  it('tells both periods of a difference', () => {
    const [surface, against] = [madeSurface(1, 1, () => 30), madeSurface(1, 1, () => 3)];
    const read = readCell({ mode: 'difference', surface, against }, names, at, stations, 'F')!;
    expect(read.lines).toEqual(['Yuzu: about 1 winter in 30', 'Pummelo: about 1 winter in 3']);
    expect(read.paintClass.label).toBe('over 4 times as rarely');
  });
});

describe('the cross-hair', () => {
  it('moves from centre to centre and stays on the cells', () => {
    const surface = madeSurface(3, 3, () => 5);
    const start = cellBeside(surface, { lat: 31.04, lon: -41.93 }, 0, 0);
    expect(start.lat).toBeCloseTo(31, 9);
    expect(start.lon).toBeCloseTo(-41.9, 9);
    expect(cellBeside(surface, start, 1, 1).lon).toBeCloseTo(-41.8, 9);
    expect(cellBeside(surface, start, 10, -10)).toEqual(cellBeside(surface, { lat: 31, lon: -41.8 }, 0, 0));
  });
});

describe('the legend', () => {
  it('names what is beyond the record only where it occurs', () => {
    const all = madeSurface(3, 1, (c) => [5, Infinity, 'far' as const][c], 138);
    const words = legendOf({ mode: 'periods', surface: all }, names);
    expect(words.classes.map(({ label }) => label)).toContain('rarer than the record can tell (1 in 138)');
    const plain = legendOf({ mode: 'periods', surface: madeSurface(3, 1, () => 5) }, names);
    expect(plain.classes.map(({ id }) => id)).not.toContain('beyond');
  });
  it('sums up the land where the tree lives long enough', () => {
    const surface = madeSurface(4, 1, (c) => [5, 30, 40, 50][c]);
    const words = legendOf({ mode: 'where', surface, atLeastWinters: 25 }, names);
    expect(words.result).toBe('75% of the land.');
  });
});
