import { t } from '../../language/t.ts';
import type { Yard } from '../yard.ts';
import { crown, rectangle } from './shapes.ts';

/** Slope to the south-east with a hollow dammed by a board fence, a rise and a windbreak above. Invented. */
export const HILLSIDE: Yard = {
  name: t`Hillside below Corrow (invented)`,
  widthM: 36,
  depthM: 30,
  things: [
    {
      kind: 'building',
      id: 'cottage',
      outline: rectangle(7, 17, 16, 23),
      heightM: 4.5,
      heated: true,
      masonry: false,
    },
    {
      kind: 'windbreak',
      id: 'windbreak',
      line: [
        [2, 12],
        [2, 28],
        [20, 28],
      ],
      heightM: 5,
    },
    {
      kind: 'wall',
      id: 'board-fence',
      line: [
        [18, 2],
        [34, 2],
        [34, 10],
      ],
      heightM: 1.6,
      masonry: false,
      open: false,
    },
    { kind: 'hollow', id: 'hollow', at: [27, 7], byM: 1.5, radiusM: 7 },
    { kind: 'rise', id: 'knoll', at: [29, 22], byM: 1.2, radiusM: 6 },
    { kind: 'ground', id: 'rough-grass', outline: rectangle(20, 3, 33, 12), cover: 'tall-grass' },
    { kind: 'ground', id: 'plot', outline: rectangle(6, 6, 14, 12), cover: 'bare' },
    { kind: 'canopy', id: 'bay-tree', outline: crown(20, 19, 2), baseM: 1.8, heightM: 5, density: 0.7 },
    {
      kind: 'wall',
      id: 'stone-wall',
      line: [
        [16, 24],
        [25, 26],
      ],
      heightM: 1.8,
      masonry: true,
      open: false,
    },
  ],
  spots: [
    { id: 'below-cottage', name: t`Below the cottage`, at: [11, 14.5] },
    { id: 'in-hollow', name: t`Hollow`, at: [27, 7] },
    { id: 'on-knoll', name: t`Knoll`, at: [29, 22] },
  ],
  slope: { towardsDeg: 150, percent: 9, position: 'middle' },
  bigWater: null,
  coldWindFromDeg: 320,
  own: {},
};
