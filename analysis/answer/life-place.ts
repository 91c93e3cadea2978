import { ACTION_MARGIN_C } from '../cover/cover-nights.ts';
import { seededRandom } from '../math/seeded-random.ts';
import type { KeptNights } from '../records/kept-nights.ts';
import { SUSTAINED_HOURS } from '../records/nights.ts';
import { bearingOf } from '../tree/bearing.ts';
import type { CitrusType } from '../tree/catalogue.ts';
import { flushOfNights } from '../tree/flush.ts';
import { hardeningOfNights } from '../tree/hardening.ts';
import { hangsUntil, harvestWindow } from '../tree/harvest.ts';
import type { LevelGains, LevelGainSpreads } from '../tree/level-gains.ts';
import { byLevel } from '../tree/levels.ts';
import { readingOf } from '../tree/life/reading-of.ts';
import { makeRings, type Rings } from '../tree/life/rings.ts';
import { makeMargins, type NightStates } from '../tree/make-margins.ts';
import { nightsToCover } from '../tree/nights-to-cover.ts';
import type { TreeState } from '../tree/penalties.ts';
import type { Reading, WinterMargins } from '../tree/winter-margins.ts';
import { toHundredths } from '../units/temperature.ts';
import { gainsAt } from '../winter/gain-spread.ts';
import { NO_GAINS, winterMinima } from '../winter/winter-minima.ts';
import { hemisphereOf } from '../winter/winter-year.ts';
import type { LifeReading, Planting } from './life.ts';
import type { Subject } from './subject.ts';
import { celsiusOrNaN } from './winter-values.ts';

/** A place with its nights and what trees are in on each of them. */
export interface LifePlace {
  readonly subject: Subject;
  readonly nights: KeptNights;
  readonly state: NightStates;
}

/** How trees are grown there. */
export interface GrownTrees {
  /** Its age, load and hardening change through a life, and are not looked at. */
  readonly tree: TreeState;
  /** What the spot adds, and what spot and cover add together. */
  readonly spotGains: LevelGainSpreads;
  readonly gains: LevelGainSpreads;
  /** Something of the cover is put on each cold night. */
  readonly nightWork: boolean;
  readonly planting: Planting;
}

export interface LifeQuestion extends GrownTrees {
  readonly types: readonly CitrusType[];
}

const SEED = 20_011;
/** Hours whose coldest values tell how far a winter stands from the others: what most thresholds ask for. */
const COLD_HOURS = 4;

/** What trees are in on each night; the same for every type. */
export function lifePlace(
  subject: Subject,
  nights: KeptNights,
  { calendar }: Pick<Planting, 'calendar'>,
): LifePlace {
  const hemisphere = hemisphereOf(subject.place.lat);
  const flush = flushOfNights(nights, calendar, hemisphere);
  return { subject, nights, state: { hardening: hardeningOfNights(nights), flush } };
}

/** Margins of a type in every winter of the place. */
export function marginsOf(
  { subject, nights, state }: LifePlace,
  type: CitrusType,
  { tree, gains, planting }: GrownTrees,
): WinterMargins {
  const hemisphere = hemisphereOf(subject.place.lat);
  return makeMargins(nights, subject.winters, state, {
    type,
    tree,
    gains: centreOf(gains),
    hangsUntil: hangsUntil(harvestWindow(type, planting.calendar, hemisphere), planting.picking),
    hemisphere,
  });
}

/**
 * Nights a winter on which a cover would go on over a tree on the bare spot, by `coverIndex`; `null` where nothing is put over it at
 * night that the leaves feel.
 */
export function nightsCovered(
  { subject, nights, state }: LifePlace,
  type: CitrusType,
  { tree, spotGains, gains, nightWork, planting }: GrownTrees,
  reading: Reading,
): Int16Array | null {
  if (!nightWork) return null;
  const [bare, covered] = [spotGains, gains].map((all) => gainsAt(all.leaf, 'centreC'));
  if (covered.calmC <= bare.calmC && covered.windyC <= bare.windyC) return null;
  const hemisphere = hemisphereOf(subject.place.lat);
  return nightsToCover(nights, subject.winters, {
    type,
    tree,
    spotGains: centreOf(spotGains),
    hangsUntil: hangsUntil(harvestWindow(type, planting.calendar, hemisphere), planting.picking),
    withinC: ACTION_MARGIN_C,
    hemisphere,
    ...(reading === 'night_by_night' && { hardening: state.hardening }),
  });
}

/** What the record tells of a type by one reading, without ranges. */
export function readingAt(
  place: LifePlace,
  type: CitrusType,
  question: GrownTrees,
  margins: WinterMargins,
  reading: Reading,
): LifeReading {
  const { lowC, centreC, highC } = type.thresholds.kill;
  return readingOf(margins, {
    reading,
    startAgeYears: question.planting.startAgeYears,
    firstCropYear: bearingOf(type).firstCropYear,
    killEnds: { low: toHundredths(lowC - centreC), high: toHundredths(highC - centreC) },
    nightsToCover: nightsCovered(place, type, question, reading),
  });
}

/** The winters of a place in new orders; where it has no station, each order with an error of its own. */
export function ringsOf({ winters, interpolation }: Subject): Rings {
  const error = interpolation?.[SUSTAINED_HOURS.indexOf(COLD_HOURS)];
  const coldestC = Float64Array.from(winterMinima(winters, COLD_HOURS, NO_GAINS), celsiusOrNaN);
  return makeRings({
    complete: winters.complete,
    random: seededRandom(SEED),
    place: error ? { error, coldestC } : null,
  });
}

export function centreOf(gains: LevelGainSpreads): LevelGains {
  return byLevel((level) => gainsAt(gains[level], 'centreC'));
}
