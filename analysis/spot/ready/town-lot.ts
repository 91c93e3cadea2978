import { t } from '../../language/t.ts';
import type { Yard } from '../yard.ts';
import { crown, rectangle } from './shapes.ts';

/** Flat lot in town: heated brick house with a wing, garden wall, drive and terrace. Invented. */
export const TOWN_LOT: Yard = {
  name: t`Town lot, Sallowmere (invented)`,
  widthM: 32,
  depthM: 24,
  things: [
    {
      kind: 'building',
      id: 'house',
      outline: [
        [5, 14],
        [15, 14],
        [15, 11],
        [20, 11],
        [20, 22],
        [5, 22],
      ],
      heightM: 5.5,
      heated: true,
      masonry: true,
    },
    {
      kind: 'building',
      id: 'garage',
      outline: rectangle(24, 15, 30, 21),
      heightM: 3,
      heated: false,
      masonry: false,
    },
    {
      kind: 'wall',
      id: 'brick-wall',
      line: [
        [0.5, 4],
        [0.5, 20],
        [5, 20],
      ],
      heightM: 2.2,
      masonry: true,
      open: false,
    },
    {
      kind: 'wall',
      id: 'street-fence',
      line: [
        [0.5, 0.5],
        [24, 0.5],
      ],
      heightM: 1.1,
      masonry: false,
      open: true,
    },
    { kind: 'paving', id: 'drive', outline: rectangle(25, 0, 29, 15) },
    { kind: 'paving', id: 'terrace', outline: rectangle(7, 11, 15, 14) },
    { kind: 'canopy', id: 'oak', outline: crown(19.5, 5, 2.8), baseM: 2.4, heightM: 7.5, density: 0.75 },
    { kind: 'ground', id: 'bed', outline: rectangle(1, 5, 2.5, 19), cover: 'mulch' },
  ],
  spots: [
    { id: 'corner', name: t`House corner`, at: [13.5, 12.5] },
    { id: 'lawn', name: t`Lawn`, at: [10, 5] },
    { id: 'oak-edge', name: t`Under the oak`, at: [18, 5] },
  ],
  slope: null,
  bigWater: null,
  coldWindFromDeg: 330,
  own: {},
};
