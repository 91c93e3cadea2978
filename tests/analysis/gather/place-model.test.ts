import { expect, it } from 'vitest';
import { placeModel } from '../../../analysis/gather/place-model.ts';
import type { PackStation } from '../../../analysis/records/pack.ts';
import { InventedLand } from '../place/invented-land.ts';
import { inventedStation } from '../answer/invented-source.ts';

it('is fitted to the hemisphere that has most stations; the few of the other leave it as it is', () => {
  const land = new InventedLand({ seed: 5, winters: 40 });
  const members = land.members(land.scattered(14, 60, 200));
  const winters = new Map(members.map(({ id, winters }) => [id, winters]));
  const inSouth = (station: PackStation): PackStation => ({ ...station, lat: -station.lat });
  const north = members.map(inventedStation);
  const south = north.map(inSouth);
  const [ofNorth, ofSouth] = [placeModel(north, winters), placeModel(south, winters)];
  const mixed = (southern: number) =>
    placeModel(
      north.map((station, at) => (at < southern ? inSouth(station) : station)),
      winters,
    );
  expect(mixed(4)).toEqual(placeModel(north.slice(4), winters));
  expect(mixed(10)).toEqual(placeModel(south.slice(0, 10), winters));
  expect(mixed(4)).not.toEqual(ofNorth);
  expect(mixed(10)).not.toEqual(ofSouth);
});
