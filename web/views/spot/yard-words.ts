import { t } from '../../../analysis/language/t.ts';
import type { Ground, YardThing } from '../../../analysis/spot/yard.ts';
import { formatLength, type LengthUnit } from '../../yard/lengths.ts';
import { lineLength, sizeOf } from '../../yard/sizes.ts';

export const COVER_WORDS: Readonly<Record<Ground['cover'], string>> = {
  bare: t`Bare, moist, firm`,
  mulch: t`Thick mulch`,
  'tall-grass': t`Tall grass`,
};

/** Ids of the things of ready yards, which are words of their own. */
const READY_WORDS: Readonly<Record<string, string>> = {
  'bay-tree': t`Bay tree`,
  bed: t`Bed`,
  'board-fence': t`Board fence`,
  'brick-wall': t`Brick wall`,
  cottage: t`Cottage`,
  court: t`Court`,
  'court-wall': t`Court wall`,
  drive: t`Drive`,
  garage: t`Garage`,
  hollow: t`Hollow`,
  house: t`House`,
  knoll: t`Knoll`,
  oak: t`Oak`,
  'oak-north': t`Oak north`,
  'oak-west': t`Oak west`,
  plot: t`Plot`,
  pond: t`Pond`,
  porch: t`Porch`,
  'rough-grass': t`Rough grass`,
  'shore-fence': t`Shore fence`,
  'stone-wall': t`Stone wall`,
  'street-fence': t`Street fence`,
  terrace: t`Terrace`,
  windbreak: t`Windbreak`,
};

/** What a thing is called in the list: by its kind and number, or by the words of its id. */
export function listedName(thing: YardThing): string {
  const number = new RegExp(`^${thing.kind}-(\\d+)$`).exec(thing.id)?.[1];
  const words =
    number === undefined
      ? (READY_WORDS[thing.id] ?? thing.id.replaceAll('-', ' '))
      : `${kindWords(thing)} ${number}`;
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** The kind of a thing, told more closely than its kind is. */
function kindWords(thing: YardThing): string {
  switch (thing.kind) {
    case 'building':
      return thing.heated ? t`heated building` : t`unheated building`;
    case 'wall':
      return thing.masonry ? t`wall` : t`fence`;
    case 'ground':
      return { bare: t`bare ground`, mulch: t`mulch`, 'tall-grass': t`tall grass` }[thing.cover];
    case 'canopy':
      return t`evergreen canopy`;
    case 'paving':
      return t`paving`;
    case 'windbreak':
      return t`windbreak`;
    case 'hollow':
      return t`hollow`;
    case 'water':
      return t`pond`;
    case 'rise':
      return t`high point`;
  }
}

/** Its sizes in a few words: `12 by 8 m, 5 m high`, with its kind before them where the name doesn't tell it. */
export function sizeWords(thing: YardThing, unit: LengthUnit): string {
  const kind = kindWords(thing);
  const told = listedName(thing).toLowerCase();
  const isNamed = kind.split(' ').every((word) => told.includes(word));
  const size = sizes(thing, unit);
  return isNamed ? size : `${kind}, ${size}`;
}

function sizes(thing: YardThing, unit: LengthUnit): string {
  const long = (metres: number): string => formatLength(metres, unit);
  if ('at' in thing)
    return thing.kind === 'hollow'
      ? t`${long(thing.byM)} deep, ${long(thing.radiusM)} all round`
      : t`${long(thing.byM)} high, ${long(thing.radiusM)} all round`;
  const flat = 'line' in thing ? t`${long(lineLength(thing.line))} long` : sides(thing, long);
  return 'heightM' in thing ? t`${flat}, ${long(thing.heightM)} high` : flat;
}

function sides(thing: YardThing, long: (metres: number) => string): string {
  const { acrossM, upM } = sizeOf(thing);
  return t`${long(acrossM).replace(/\s.*$/, '')} by ${long(upM)}`;
}
