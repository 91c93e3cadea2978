import type { Level } from '../../analysis/tree/levels.ts';

/** How a level is named and told. */
export interface LevelWords {
  /** On buttons and marks. */
  readonly label: string;
  /** `would have ...`. */
  readonly took: string;
  /** `it is taken to ...`, `seven kinds ...`; one kind: `it ...`. */
  readonly many: string;
  readonly one: string;
  /** `how often cold takes ...`. */
  readonly object: string;
  /** What the level means, one sentence. */
  readonly meaning: string;
}

export const LEVEL_WORDS: Readonly<Record<Level, LevelWords>> = {
  fruit: {
    label: 'Fruit',
    took: 'lost the fruit still hanging on it',
    many: 'lose their fruit',
    one: 'loses its fruit',
    object: 'the fruit',
    meaning: 'Fruit on the tree freezes; it may be juiced at once or is lost.',
  },
  leaf: {
    label: 'Leaf',
    took: 'lost leaves and twigs',
    many: 'lose leaves and twigs',
    one: 'loses leaves and twigs',
    object: 'leaves and twigs',
    meaning: 'Leaves and young twigs die; the tree grows them again in spring and bears less.',
  },
  wood: {
    label: 'Wood',
    took: 'lost major limbs',
    many: 'lose major limbs',
    one: 'loses major limbs',
    object: 'major limbs',
    meaning: 'Large branches die back; the tree needs years to bear as before.',
  },
  kill: {
    label: 'Life',
    took: 'been killed down to its graft',
    many: 'die back to the graft',
    one: 'dies back to its graft',
    object: 'the tree itself',
    meaning:
      'The tree dies down to its graft. Most of these figures are inferred, so they are shown as a band.',
  },
};
