import { depthDuration } from '../extremes/depth-duration.ts';
import { recordLength } from '../extremes/headline.ts';
import { SUSTAINED_HOURS } from '../records/nights.ts';
import type { CitrusType } from '../tree/catalogue.ts';
import type { Level } from '../tree/levels.ts';
import type { LevelGainSpreads } from '../tree/level-gains.ts';
import type { TreeState } from '../tree/penalties.ts';
import { gainsAt } from '../winter/gain-spread.ts';
import { winterMinima, type Gains } from '../winter/winter-minima.ts';
import type { Assessment, DepthDuration, Ranking, WinterHistory } from './assessment.ts';
import { FitShelf, type FitBook } from './fit-book.ts';
import { lengthNotes } from './length-notes.ts';
import { answerLevel, type HitNightCount } from './level-answer.ts';
import type { Subject } from './subject.ts';
import { answerTrend } from './trend-answer.ts';
import { celsiusOrNaN, DurationReadings } from './winter-values.ts';

export interface AssessRequest {
  readonly types: readonly CitrusType[];
  readonly levels: readonly Level[];
  readonly tree: TreeState;
  /** What spot and cover add at each level, with the ends of it. */
  readonly gains: LevelGainSpreads;
  /** Words for where the tree stands and what is over it, and what of that was left out. */
  readonly standing?: string;
  readonly standingProblems?: readonly string[];
  readonly notes?: readonly string[];
  /** Horizon of `chance_in_years`, whole winters. */
  readonly years: number;
  /** Nights that hit, where a database of nights is at hand. */
  readonly hitNights?: HitNightCount;
  /** Draws behind every range; 1,000 unless told. */
  readonly draws?: number;
}

/**
 * Puts the chain together for one place: winters with gains, counts and fits, thresholds with penalties, for every type
 * and level asked for (design 3.3-3.5).
 * @param shelf fits of this subject, where an earlier answer has made some
 */
export function assess(
  subject: Subject,
  request: AssessRequest,
  shelf = new FitShelf(subject, request.draws),
): Assessment {
  const book = shelf.forGains(canopyGains(request.gains));
  return { ...rankTypes(subject, request, shelf), cold: depthDurationOf(subject, book) };
}

/** The answer without its curves of depth and duration: what a page shows first. See {@link assess}. */
export function rankTypes(
  subject: Subject,
  request: AssessRequest,
  shelf = new FitShelf(subject, request.draws),
): Ranking {
  const { winters } = subject;
  const { gains, types, levels, tree, years } = request;
  const canopy = canopyGains(gains);
  const graft = gainsAt(gains.kill, 'centreC');
  const long = new DurationReadings(winters);
  const used = [...winters.winter].filter((_, w) => winters.complete[w] === 1);
  return {
    place: subject.place,
    winters: {
      used: used.length,
      first: used[0] ?? null,
      last: used.at(-1) ?? null,
      left_out: [...winters.winter].flatMap((winter, w) =>
        winters.complete[w] ? [] : [{ winter, reason: winters.reason[w] }],
      ),
    },
    history: historyOf(subject, canopy),
    graft_history: sameGains(graft, canopy) ? null : historyOf(subject, graft),
    standing: request.standing ?? '',
    standing_problems: request.standingProblems ?? [],
    types: types.map((type) => ({
      id: type.id,
      name: type.name,
      use: type.use,
      levels: levels.map((level) =>
        answerLevel(
          { type, level, tree, gain: gains[level], years },
          winters,
          shelf,
          long,
          request.hitNights ?? (() => null),
        ),
      ),
    })),
    trend: answerTrend(winters, shelf.forGains(canopy).forHours(4)),
    evidence: subject.evidence,
    notes: [
      ...subject.notes,
      ...lengthNotes(used.length, recordLength(used.length)),
      ...(request.notes ?? []),
    ],
  };
}

/** What the winters shown gain: as the leaves do, since what is put round the trunk warms no air. */
export function canopyGains(gains: LevelGainSpreads): Gains {
  return gainsAt(gains.leaf, 'centreC');
}

function sameGains(a: Gains, b: Gains): boolean {
  return a.calmC === b.calmC && a.windyC === b.windyC;
}

function historyOf({ winters }: Subject, gains: Gains): WinterHistory[] {
  const byHours = SUSTAINED_HOURS.map((hours) => ({ hours, minima: winterMinima(winters, hours, gains) }));
  return Array.from(winters.winter, (winter, w) => ({
    winter,
    complete: winters.complete[w] === 1,
    m_c: Object.fromEntries(
      byHours.map(({ hours, minima }) => {
        const level = celsiusOrNaN(minima[w]);
        return [String(hours), Number.isNaN(level) ? null : level];
      }),
    ),
  }));
}

/** Levels by hours and return period, from the fits of a book made for this subject. */
export function depthDurationOf({ winters }: Subject, book: FitBook): DepthDuration[] {
  const fits = SUSTAINED_HOURS.map((hours) => ({ hours, fit: book.forHours(hours).fit }));
  const complete = winters.complete.filter((flag) => flag === 1).length;
  return depthDuration(fits, complete).map(({ hours, periodWinters, level }) => ({
    hours,
    period_winters: periodWinters,
    level_c: level?.levelC ?? null,
    low_c: level?.lowC ?? null,
    high_c: level?.highC ?? null,
  }));
}
