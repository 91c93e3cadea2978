import { thingName } from '../../../analysis/spot/thing-problems.ts';
import type { Ground, YardThing } from '../../../analysis/spot/yard.ts';
import { formatLength, type LengthUnit } from '../../yard/lengths.ts';
import { lineLength, sizeOf } from '../../yard/sizes.ts';

export const COVER_WORDS: Readonly<Record<Ground['cover'], string>> = {
  bare: 'Bare, moist, firm',
  mulch: 'Thick mulch',
  'tall-grass': 'Tall grass',
};

/** What a thing is called in the list: as in sentences, but said more closely than by its kind. */
export function listedName(thing: YardThing): string {
  const name = thingName(thing);
  const closer = closerName(thing);
  const number = /\d+$/.exec(name)?.[0];
  const words = closer === null ? name : `${closer} ${number ?? name.slice(name.indexOf('"'))}`;
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function closerName(thing: YardThing): string | null {
  if (thing.kind === 'building') return thing.heated ? 'heated building' : 'unheated building';
  if (thing.kind === 'wall' && !thing.masonry) return 'fence';
  if (thing.kind === 'ground')
    return { bare: 'bare ground', mulch: 'mulch', 'tall-grass': 'tall grass' }[thing.cover];
  return null;
}

/** Its sizes in a few words: `12 by 8 m, 5 m high`. */
export function sizeWords(thing: YardThing, unit: LengthUnit): string {
  const long = (metres: number): string => formatLength(metres, unit);
  if ('at' in thing)
    return `${long(thing.byM)} ${thing.kind === 'hollow' ? 'deep' : 'high'}, ${long(thing.radiusM)} all round`;
  const high = 'heightM' in thing ? `, ${long(thing.heightM)} high` : '';
  if ('line' in thing) return `${long(lineLength(thing.line))} long${high}`;
  const { acrossM, upM } = sizeOf(thing);
  return `${long(acrossM).replace(/\s.*$/, '')} by ${long(upM)}${high}`;
}
