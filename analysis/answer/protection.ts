import { coverParts, type CoverParts } from '../cover/cover-gains.ts';
import { isCoverId, writtenCovers } from '../cover/cover-ids.ts';
import { findMeasure, worksAtNight } from '../cover/measures.ts';
import { countingIds, coverNotes, refusals } from '../cover/refusals.ts';
import { t } from '../language/t.ts';
import { InputError } from '../records/input-error.ts';
import type { MechanismId } from '../spot/mechanism.ts';
import { NO_LEVEL_GAIN_SPREADS, type LevelGainSpreads } from '../tree/level-gains.ts';
import { byLevel } from '../tree/levels.ts';
import { isCapped, jointGain, orAlone } from './joint-gain.ts';
import { IN_THE_OPEN, standingSpot, type StandingSpot } from './standing-spot.ts';

/** Where in the yard the tree stands and what is put over it, as texts of an address or a command line. */
export interface ProtectionTexts {
  /** A named spot, or `yard:EAST,NORTH` in metres; `null`: in the open. */
  readonly spot: string | null;
  readonly yard: string | null;
  readonly measured: string | null;
  /** Ids of measures and their conditions, `a,b`; `null`: no cover. */
  readonly cover: string | null;
  /** Says which walls face the sun. */
  readonly hemisphere: 'north' | 'south';
  /** A tree in a pot can be brought in. */
  readonly container: boolean;
}

/** No spot chosen and nothing put over it. */
export const NOTHING_CHOSEN = { spot: null, yard: null, measured: null, cover: null } as const;

/** What they come to. */
export interface Protection {
  readonly spot: StandingSpot;
  /** Gain of the cover alone. */
  readonly cover: LevelGainSpreads;
  /** Spot and cover together, never above the joint cap. */
  readonly gains: LevelGainSpreads;
  /** Something of the cover is put on, or the tree brought in, on each cold night. */
  readonly nightWork: boolean;
  /** `spot: …; cover: …`, empty in the open without a cover. */
  readonly words: string;
  /** What was left out and why: texts that make no sense, and what is refused. */
  readonly problems: readonly string[];
  /** What is worth knowing of the rest. */
  readonly notes: readonly string[];
}

const NO_COVER: CoverParts = { air: NO_LEVEL_GAIN_SPREADS, alone: NO_LEVEL_GAIN_SPREADS };

/**
 * Reads the texts and adds up. A part that makes no sense, or is refused, counts nothing and says so: a link that is half
 * wrong still gives an answer.
 */
export function readProtection(texts: ProtectionTexts): Protection {
  const problems: string[] = [];
  const spot = spotOrProblem(texts, problems);
  const named = writtenCovers(texts.cover);
  const ids = named.filter(isCoverId);
  for (const id of named.filter((name) => !isCoverId(name)))
    problems.push(t`Cover “${id}” is not known here; it was left out.`);
  problems.push(...refusals(ids, texts));
  return together(spot, countingIds(ids, texts), problems);
}

/** The same for a command. @throws InputError for a part that makes no sense, or is refused */
export function strictProtection(texts: ProtectionTexts): Protection {
  const ids = writtenCovers(texts.cover);
  const [refusal] = refusals(ids, texts);
  if (refusal) throw new InputError(`--cover ${ids.join(',')}: ${refusal}`);
  return together(standingSpot(texts), ids, []);
}

/**
 * What covers gain on a spot at each level, held to the joint cap; what counts in the spot already isn't counted again.
 * @throws InputError for an unknown id
 */
export function gainsOnSpot(spot: StandingSpot, ids: readonly string[]): LevelGainSpreads {
  const counted = ids.filter((id) => !sameGround(id, spot.mechanisms));
  const { air, alone } = counted.length > 0 ? coverParts(counted) : NO_COVER;
  return byLevel((level) => orAlone(jointGain(spot.gain, air[level]), alone[level]));
}

function together(spot: StandingSpot, ids: readonly string[], problems: readonly string[]): Protection {
  const twice = ids.filter((id) => sameGround(id, spot.mechanisms));
  const counted = ids.filter((id) => !twice.includes(id));
  const { air, alone } = counted.length > 0 ? coverParts(counted) : NO_COVER;
  const gains = gainsOnSpot(spot, counted);
  const names = counted.flatMap((id) => {
    const name = findMeasure(id)?.name;
    return name ? name.charAt(0).toLowerCase() + name.slice(1) : [];
  });
  const list = names.join(', ');
  const words = [
    spot.words && t`spot: ${spot.words}`,
    list && (counted.includes('tied') ? t`cover: ${list}; tied to the ground all round` : t`cover: ${list}`),
  ];
  return {
    spot,
    cover: byLevel((level) => orAlone(air[level], alone[level])),
    gains,
    nightWork: worksAtNight(counted),
    words: words.filter(Boolean).join('; '),
    problems,
    notes: [
      ...twice.map(
        (id) => t`${findMeasure(id)!.name} counts in the spot already, not once more in the cover.`,
      ),
      ...coverNotes(counted),
      ...(isCapped(spot.gain, air.leaf)
        ? [t`Spot and cover together are held to 10 °F (5.6 °C) on calm and 5 °F (2.8 °C) on windy nights.`]
        : []),
    ],
  };
}

/** The ground under a tree warms the air once, drawn in the yard or named as a cover. */
function sameGround(id: string, mechanisms: readonly MechanismId[]): boolean {
  const ground = findMeasure(id)?.alsoInSpot;
  return ground !== undefined && ground !== null && mechanisms.includes(ground);
}

function spotOrProblem(texts: ProtectionTexts, problems: string[]): StandingSpot {
  try {
    return standingSpot(texts);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    problems.push(t`The spot was left out: ${error.message}`);
    return IN_THE_OPEN;
  }
}
