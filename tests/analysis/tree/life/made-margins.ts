import fc from 'fast-check';
import { seededRandom } from '../../../../analysis/math/seeded-random.ts';
import { MISSING_HUNDREDTHS } from '../../../../analysis/records/nights.ts';
import {
  AGE_CLASS_FROM,
  LOSSES,
  MARGINS_A_WINTER,
  marginIndex,
  READINGS,
  type Loss,
  type WinterMargins,
} from '../../../../analysis/tree/winter-margins.ts';

/** Winters from 1951 on in which nothing comes near. */
export function quiet(winters: number): WinterMargins {
  return {
    winter: Int16Array.from({ length: winters }, (_, j) => 1951 + j),
    complete: new Uint8Array(winters).fill(1),
    margins: new Int16Array(winters * MARGINS_A_WINTER).fill(MISSING_HUNDREDTHS),
  };
}

/** The same with a loss in one winter (from 0), for trees up to an age class only where told. */
export function withLoss(
  made: WinterMargins,
  winter: number,
  loss: Loss,
  { oldestClass = AGE_CLASS_FROM.length - 1, margin = 0 } = {},
): WinterMargins {
  const margins = made.margins.slice();
  for (const reading of READINGS)
    for (let ageClass = 0; ageClass <= oldestClass; ageClass++)
      for (const bearing of [false, true])
        margins[marginIndex(winter, { reading, ageClass, bearing }) + LOSSES.indexOf(loss)] = margin;
  return { ...made, margins };
}

export function notComplete(made: WinterMargins, ...winters: number[]): WinterMargins {
  const complete = made.complete.slice();
  for (const j of winters) complete[j] = 0;
  return { ...made, complete };
}

/** Margins without any order among ages, loads, losses and readings: the rules must hold for any. */
export const anyMargins = fc
  .record({
    winters: fc.integer({ min: 1, max: 50 }),
    hits: fc.constantFrom(0, 0.02, 0.1, 0.3),
    gaps: fc.constantFrom(0, 0.1, 0.4),
    seed: fc.integer(),
  })
  .map(({ winters, hits, gaps, seed }): WinterMargins => {
    const random = seededRandom(seed);
    const made = quiet(winters);
    for (let i = 0; i < made.margins.length; i++) {
      if (random.uniform() < hits) made.margins[i] = random.index(300);
      else if (random.uniform() < 0.8) made.margins[i] = -1 - random.index(1500);
    }
    for (let j = 1; j < winters; j++) if (random.uniform() < gaps) made.complete[j] = 0;
    return made;
  });

/** The same winters with some margins raised, others left. */
export function raised(made: WinterMargins, share: number, seed: number): WinterMargins {
  const random = seededRandom(seed);
  const margins = made.margins.map((margin) => {
    if (random.uniform() >= share) return margin;
    return margin === MISSING_HUNDREDTHS ? random.index(1500) - 1500 : margin + random.index(1200);
  });
  return { ...made, margins };
}

export const anyTree = fc.record({
  startAgeYears: fc.integer({ min: 1, max: 5 }),
  firstCropYear: fc.integer({ min: 2, max: 6 }),
  reading: fc.constantFrom(...READINGS),
});
