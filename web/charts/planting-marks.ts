import { t } from '../../analysis/language/t.ts';
import { markPath } from './mark-paths.ts';

/** How one winter of a planting is drawn: a shape of its own and a step of the cold ramp, so that it reads without colour. */
export interface PlantingMark {
  readonly letter: string;
  /** In the key. */
  readonly name: string;
  /** `none`: a mark of the quiet winters, in ink. */
  readonly tone: 'none' | 'hollow' | 1 | 2 | 3 | 4 | 5 | 6;
  /** SVG path around (0, 0) in a cell so many px wide and high. */
  readonly path: (width: number, height: number) => string;
}

const circle = (r: number): string => `M${-r},0a${r},${r} 0 1,0 ${2 * r},0a${r},${r} 0 1,0 ${-2 * r},0Z`;

/** From quiet to the worst; the marks grow with the loss, and a kill is as high as its row, so that a freeze becomes a wall. */
export const PLANTING_MARKS: readonly PlantingMark[] = [
  { letter: '.', name: t`too young to bear`, tone: 'none', path: () => circle(0.9) },
  { letter: 'c', name: t`crop picked`, tone: 'none', path: () => circle(2.1) },
  { letter: 'r', name: t`no crop, growing again`, tone: 'hollow', path: () => 'M-2,-2H2V2H-2Z' },
  { letter: '?', name: t`winter not complete`, tone: 'none', path: () => 'M-2,3L2,-3' },
  { letter: 'b', name: t`picked, its bloom or new growth hit`, tone: 'hollow', path: () => circle(3) },
  { letter: 'f', name: t`crop lost`, tone: 3, path: () => markPath('circle', 4.4) },
  { letter: 'l', name: t`leaves lost`, tone: 4, path: () => markPath('triangle', 4.6) },
  { letter: 'w', name: t`limbs lost`, tone: 5, path: () => markPath('diamond', 5.2) },
  {
    letter: 'k',
    name: t`killed`,
    tone: 6,
    path: (width, height) => {
      const [x, y] = [width * 0.36, height / 2];
      return `M${-x},${-y}H${x}V${y}H${-x}Z`;
    },
  },
];

const BY_LETTER = new Map(PLANTING_MARKS.map((mark) => [mark.letter, mark]));

/** The mark of a letter; one not known is drawn as an incomplete winter. */
export function plantingMark(letter: string): PlantingMark {
  return BY_LETTER.get(letter) ?? BY_LETTER.get('?')!;
}
