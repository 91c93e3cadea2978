import { t } from '../../language/t.ts';
import type { Yard } from '../yard.ts';
import { crown, rectangle } from './shapes.ts';

/** Plot on the south-east shore of a lake: stone house, porch, paved court, crowns and a pond. Invented. */
export const LAKESIDE: Yard = {
  name: t`Lakeside plot on the Ewer (invented)`,
  widthM: 40,
  depthM: 28,
  things: [
    {
      kind: 'building',
      id: 'house',
      outline: rectangle(13, 13, 25, 20),
      heightM: 4.2,
      heated: true,
      masonry: true,
    },
    {
      kind: 'canopy',
      id: 'porch',
      outline: rectangle(14, 10.5, 20, 13),
      baseM: 2.4,
      heightM: 2.8,
      density: 1,
    },
    { kind: 'paving', id: 'court', outline: rectangle(12, 5, 25, 13) },
    { kind: 'canopy', id: 'oak-west', outline: crown(6.5, 10, 4), baseM: 3, heightM: 10, density: 0.8 },
    { kind: 'canopy', id: 'oak-north', outline: crown(30, 22, 3.5), baseM: 2.8, heightM: 9, density: 0.8 },
    { kind: 'water', id: 'pond', outline: crown(32, 8, 3.5) },
    {
      kind: 'wall',
      id: 'court-wall',
      line: [
        [25, 13],
        [25, 5.5],
      ],
      heightM: 2,
      masonry: true,
      open: false,
    },
    {
      kind: 'wall',
      id: 'shore-fence',
      line: [
        [2, 27],
        [38, 27],
      ],
      heightM: 1,
      masonry: false,
      open: true,
    },
  ],
  spots: [
    { id: 'court-corner', name: t`Court`, at: [22.5, 10.5] },
    { id: 'under-oak', name: t`Under the west oak`, at: [7.5, 8] },
    { id: 'shore', name: t`Shore lawn`, at: [20, 24.5] },
  ],
  slope: { towardsDeg: 330, percent: 2, position: 'foot' },
  bigWater: { bearingDeg: 330, distanceM: 60, kind: 'lake' },
  coldWindFromDeg: 330,
  own: {},
};
