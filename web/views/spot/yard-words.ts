import type { Ground, YardThing } from '../../../analysis/spot/yard.ts';
import { formatLength, type LengthUnit } from '../../yard/lengths.ts';
import { lineLength, sizeOf } from '../../yard/sizes.ts';

export const COVER_WORDS: Readonly<Record<Ground['cover'], string>> = {
  bare: 'Bare, moist, firm',
  mulch: 'Thick mulch',
  'tall-grass': 'Tall grass',
};

/** What a thing is called in the list: by its kind and number, or by the words of its id. */
export function listedName(thing: YardThing): string {
  const number = new RegExp(`^${thing.kind}-(\\d+)$`).exec(thing.id)?.[1];
  const words = number === undefined ? thing.id.replaceAll('-', ' ') : `${kindWords(thing)} ${number}`;
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** The kind of a thing, told more closely than its kind is. */
function kindWords(thing: YardThing): string {
  switch (thing.kind) {
    case 'building':
      return thing.heated ? 'heated building' : 'unheated building';
    case 'wall':
      return thing.masonry ? 'wall' : 'fence';
    case 'ground':
      return { bare: 'bare ground', mulch: 'mulch', 'tall-grass': 'tall grass' }[thing.cover];
    case 'canopy':
      return 'evergreen canopy';
    case 'water':
      return 'pond';
    case 'rise':
      return 'high point';
    default:
      return thing.kind;
  }
}

/** Its sizes in a few words: `12 by 8 m, 5 m high`, with its kind before them where the name doesn't tell it. */
export function sizeWords(thing: YardThing, unit: LengthUnit): string {
  const kind = kindWords(thing);
  const told = listedName(thing).toLowerCase();
  const named = kind.split(' ').every((word) => told.includes(word)) ? '' : `${kind}, `;
  return named + sizes(thing, (metres) => formatLength(metres, unit));
}

function sizes(thing: YardThing, long: (metres: number) => string): string {
  if ('at' in thing)
    return `${long(thing.byM)} ${thing.kind === 'hollow' ? 'deep' : 'high'}, ${long(thing.radiusM)} all round`;
  const high = 'heightM' in thing ? `, ${long(thing.heightM)} high` : '';
  if ('line' in thing) return `${long(lineLength(thing.line))} long${high}`;
  const { acrossM, upM } = sizeOf(thing);
  return `${long(acrossM).replace(/\s.*$/, '')} by ${long(upM)}${high}`;
}
