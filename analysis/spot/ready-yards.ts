import { t } from '../language/t.ts';
import { HILLSIDE } from './ready/hillside.ts';
import { LAKESIDE } from './ready/lakeside.ts';
import { TOWN_LOT } from './ready/town-lot.ts';
import type { Yard } from './yard.ts';

/** A yard to begin with. */
export interface ReadyYard {
  readonly id: string;
  readonly name: string;
  /** What is to be seen there, in one sentence or two. */
  readonly about: string;
  readonly yard: Yard;
}

/** Three yards of the invented Sallowmere Coast: none is anybody's. */
export const READY_YARDS: readonly ReadyYard[] = [
  {
    id: 'town-lot',
    name: t`Town lot`,
    about: t`Invented. Flat, with a heated brick house, a garden wall, a drive, a terrace and an evergreen oak.`,
    yard: TOWN_LOT,
  },
  {
    id: 'hillside',
    name: t`Hillside`,
    about: t`Invented. Falls to the south-east, with a windbreak above, a knoll, and a hollow where a board fence keeps cold air from draining.`,
    yard: HILLSIDE,
  },
  {
    id: 'lakeside',
    name: t`Lakeside`,
    about: t`Invented. On the south-east shore of a lake, with a paved court, a porch, two evergreen oaks and a pond.`,
    yard: LAKESIDE,
  },
];
