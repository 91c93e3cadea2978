import { describe, expect, it } from 'vitest';
import { packManifest } from '../../../analysis/gather/pack-manifest.ts';
import type { PackStation } from '../../../analysis/records/pack.ts';
import { inventedWinters } from '../answer/invented-winters.ts';

const OUTCOME = { sources: [], files: [], dropped: { b: 1, a: 2 }, doubtful: {}, notes: [] };

/** The manifest of stations at some places: the first has the winters 1960 to 1979, each further one a winter more. */
function manifestOf(
  places: readonly (readonly [lat: number, lon: number])[],
  isComplete = (_at: number): boolean => true,
) {
  const stations = places.map(([lat, lon], at): PackStation => ({
    ...{
      id: `ZZ${at}`,
      name: '',
      lat,
      lon,
      elevation_m: null,
      coast_km: null,
      basis: 'daily',
      tile: 'n30w042',
    },
    winters: { complete: 0, first: null, last: null },
  }));
  const winters = new Map(
    stations.map(({ id }, at) => {
      const made = inventedWinters(20 + at, -2);
      return [id, { ...made, complete: made.complete.map(() => Number(isComplete(at))) }] as const;
    }),
  );
  const description = { id: 'own-1', title: 'Invented', invented: true, sources: [] };
  return packManifest(description, stations, winters, { ...OUTCOME, place: undefined });
}

describe('the manifest of a pack', () => {
  it('tells on which side of the equator its stations lie, and the box around them', () => {
    expect(manifestOf([[31, -42]]).hemisphere).toBe('north');
    expect(manifestOf([[-33, 18]]).hemisphere).toBe('south');
    const both = manifestOf([
      [31, -42],
      [-33, 18],
      [30, -41],
    ]);
    expect(both.hemisphere).toBe('both');
    expect(both.bbox).toEqual([-42, -33, 18, 31]);
  });

  it('spans the winters that some station has whole, else those of which there is any night', () => {
    const two = [
      [31, -42],
      [31, -41],
    ] as const;
    expect(manifestOf(two).winters).toEqual({ first: 1960, last: 1980 });
    expect(manifestOf(two, (at) => at === 0).winters).toEqual({ first: 1960, last: 1979 });
    expect(manifestOf(two, () => false).winters).toEqual({ first: 1960, last: 1980 });
  });

  it('tells reasons in their order, whatever came first', () => {
    expect(Object.keys(manifestOf([[31, -42]]).dropped)).toEqual(['a', 'b']);
  });
});
