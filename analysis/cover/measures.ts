import { said, t } from '../language/t.ts';
import { InputError } from '../records/input-error.ts';
import type { Basis } from '../tree/catalogue.ts';
import { NO_LEVEL_GAIN_SPREADS } from '../tree/level-gains.ts';
import type { Level } from '../tree/levels.ts';
import { sourceOf } from '../tree/sources.ts';
import { NO_GAIN_SPREAD, spreadOfF, type GainSpread, type SpreadF } from '../winter/gain-spread.ts';
import { ALL_CHOICES, isCoverId, type CoverId, type MeasureId } from './cover-ids.ts';
import coverSources from './cover-sources.json';
import figures from './measures.json';

/** What a measure is: of the `cover` group only the largest counts, of the `soil` group too. */
export type MeasureGroup = 'cover' | 'lights' | 'soil' | 'trunk' | 'water' | 'shelter';

/** Work of a measure at one tree. Minutes are rough, common practice, no source. */
export interface Effort {
  /** Once a season: setting up, and taking away in spring. */
  readonly seasonMinutes: number;
  /** Each cold night: putting on and taking off. */
  readonly nightMinutes: number;
  /** 1 (least work and care) to 6 (most); a combination's are added. */
  readonly rank: number;
}

/** One protection measure of the handbook's table. Heat lamps and wind machines are not among them. */
export interface Measure {
  readonly id: MeasureId;
  readonly group: MeasureGroup;
  readonly name: string;
  /** What it is and what the figure rests on. */
  readonly about: string;
  /** Degrees gained at each level; `windy` of a `tieable` measure holds only when it is tied to the ground all round. */
  readonly gain: Readonly<Record<Level, GainSpread>>;
  readonly basis: Basis;
  /** Keys of {@link coverSourceOf}. */
  readonly sources: readonly string[];
  /** Short plain sentences that stand beside it wherever it is chosen. */
  readonly cautions: readonly string[];
  readonly effort: Effort;
  /** Gains nothing in wind unless `tied` is chosen too. */
  readonly tieable: boolean;
  /** Condition without which it counts nothing. */
  readonly requires: 'lights-confirmed' | null;
  /** Holds by its own warmth, whatever the air of the yard: not part of the sum that is capped. */
  readonly standsAlone: boolean;
  readonly potsOnly: boolean;
  /** For young trees alone: on a grown one it does harm. */
  readonly youngOnly: boolean;
  /** Mechanism of a yard's spot that is the same ground: not to be counted in spot and cover both. */
  readonly alsoInSpot: 'bare-ground' | null;
}

/** All measures, in the order they are offered: soil, covers, lights, trunk, water, shelter. */
export const MEASURES: readonly Measure[] = figures.map((entry) => ({
  id: entry.id as MeasureId,
  group: entry.group as MeasureGroup,
  name: said(entry.name),
  about: said(entry.about),
  gain: gainByLevel(entry.gainF),
  basis: entry.basis as Basis,
  sources: entry.sources,
  cautions: entry.cautions.map(said),
  effort: { seasonMinutes: entry.seasonMinutes, nightMinutes: entry.nightMinutes, rank: entry.rank },
  tieable: entry.tieable ?? false,
  requires: (entry.requires ?? null) as Measure['requires'],
  standsAlone: entry.standsAlone ?? false,
  potsOnly: entry.potsOnly ?? false,
  youngOnly: entry.youngOnly ?? false,
  alsoInSpot: (entry.alsoInSpot ?? null) as Measure['alsoInSpot'],
}));

const BY_ID = new Map<string, Measure>(MEASURES.map((measure) => [measure.id, measure]));

/** A measure by its id, `undefined` when there is none (a condition or a wrong choice is no measure). */
export function findMeasure(id: string): Measure | undefined {
  return BY_ID.get(id);
}

/** What a measure gains at a level as the conditions stand: in wind nothing while it could be tied to the ground and isn't. */
export function gainNow({ gain, tieable }: Measure, level: Level, tied: boolean): GainSpread {
  return tieable && !tied ? { ...gain[level], windy: NO_GAIN_SPREAD.windy } : gain[level];
}

/** Full name of a source key of the measures, the key itself when unknown. */
export function coverSourceOf(key: string): string {
  const name = (coverSources as Record<string, string>)[key];
  return name === undefined ? sourceOf(key) : said(name);
}

/** The ids as known ones, each once, in their order. @throws InputError for one that is neither measure, condition nor wrong choice */
export function checkCoverIds(ids: readonly string[]): readonly CoverId[] {
  for (const id of ids) {
    if (isCoverId(id)) continue;
    throw new InputError(t`There is no cover "${id}"; choose among ${ALL_CHOICES.join(', ')}.`);
  }
  return [...new Set(ids)] as CoverId[];
}

function gainByLevel(byLevels: Readonly<Record<string, GainF | undefined>>): Record<Level, GainSpread> {
  const gains = { ...NO_LEVEL_GAIN_SPREADS };
  for (const [levels, gain] of Object.entries(byLevels)) {
    if (!gain) continue;
    for (const level of levels.split(',') as Level[])
      gains[level] = { calm: spreadOfF(gain.calm as SpreadF), windy: spreadOfF(gain.windy as SpreadF) };
  }
  return gains;
}

interface GainF {
  readonly calm: readonly number[];
  readonly windy: readonly number[];
}

/** Whether something of these measures is put on, or the tree brought in, on each cold night. */
export function worksAtNight(ids: readonly string[]): boolean {
  return ids.some((id) => (findMeasure(id)?.effort.nightMinutes ?? 0) > 0);
}
