import type { Assessment } from './assessment.ts';

/** The object `assess --json` prints: exactly the fields of design section 6, nothing that is only for the page. */
export function assessmentJson({ place, winters, history, cold, types }: Assessment): object {
  return {
    place,
    winters,
    history,
    cold,
    types: types.map((type) => ({
      ...type,
      levels: type.levels.map(({ beside: _beside, if_gain: _ifGain, ...level }) => level),
    })),
  };
}
