import { t } from '../../analysis/language/t.ts';
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
    label: t`Fruit`,
    took: t`lost the fruit still hanging on it`,
    many: t`lose their fruit`,
    one: t`loses its fruit`,
    object: t`the fruit`,
    meaning: t`Fruit on the tree freezes; it may be juiced at once or is lost.`,
  },
  leaf: {
    label: t`Leaf`,
    took: t`lost leaves and twigs`,
    many: t`lose leaves and twigs`,
    one: t`loses leaves and twigs`,
    object: t`leaves and twigs`,
    meaning: t`Leaves and young twigs die; the tree grows them again in spring and bears less.`,
  },
  wood: {
    label: t`Wood`,
    took: t`lost major limbs`,
    many: t`lose major limbs`,
    one: t`loses major limbs`,
    object: t`major limbs`,
    meaning: t`Large branches die back; the tree needs years to bear as before.`,
  },
  kill: {
    label: t`Life`,
    took: t`been killed down to its graft`,
    many: t`die back to the graft`,
    one: t`dies back to its graft`,
    object: t`the tree itself`,
    meaning: t`The tree dies down to its graft. Most of these figures are inferred, so they are shown as a band.`,
  },
};
