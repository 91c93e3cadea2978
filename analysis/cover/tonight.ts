import { sayFigureText } from '../language/figures.ts';
import { t } from '../language/t.ts';
import { InputError } from '../records/input-error.ts';
import type { CitrusType } from '../tree/catalogue.ts';
import type { LevelGains } from '../tree/level-gains.ts';
import { LEVELS, type Level } from '../tree/levels.ts';
import { penaltiesAt, totalPenaltyC, type TreeState } from '../tree/penalties.ts';
import { toHundredths } from '../units/temperature.ts';
import { ACTION_MARGIN_C } from './cover-nights.ts';
import { refusals } from './refusals.ts';
import { checkForecast, sustainedTonightC, type NightForecast } from './night-shape.ts';
import { timetable, type TimetableEntry } from './timetable.ts';

/** From this wind on a cover gains nothing unless tied: 10 mph, m/s. */
export const WINDY_FROM_MS = 4.47;

export interface TonightForecast extends NightForecast {
  /** Kind of night, or the wind of the coldest hours, m/s. */
  readonly wind: 'calm' | 'windy' | number;
}

/** One of the reader's trees; gains with the spot in both, the joint cap applied. */
export interface TonightTree {
  readonly label: string;
  readonly type: CitrusType;
  readonly tree: TreeState;
  readonly without: LevelGains;
  readonly withCover: LevelGains;
  /** Ids of what is at hand for it. */
  readonly cover: readonly string[];
}

/** At or below the limit; above it by no more than a forecast errs (2 °F); further above. */
export type Danger = 'lost' | 'close' | 'clear';

export interface TonightLevel {
  readonly level: Level;
  readonly hours: number;
  /** Threshold plus penalties, °C. */
  readonly limitC: number;
  /** Sustained cold of those hours in the open, °C. */
  readonly openC: number;
  /** Degrees between the tree's air and the limit, °C; at or below 0 the level is taken to be lost. */
  readonly bareMarginC: number;
  readonly coveredMarginC: number;
  readonly bare: Danger;
  readonly covered: Danger;
}

export interface TonightAnswerForTree {
  readonly label: string;
  readonly levels: readonly TonightLevel[];
  /** Most that is in danger (lost or close) bare and covered, `null` for none. */
  readonly worstBare: Level | null;
  readonly worstCovered: Level | null;
  /** Plain sentence: what it needs. */
  readonly need: string;
  /** Why part of its cover counts nothing. */
  readonly refused: readonly string[];
}

export interface Tonight {
  readonly kind: 'calm' | 'windy';
  /** To be read first. */
  readonly safety: readonly string[];
  /** The neediest first. */
  readonly trees: readonly TonightAnswerForTree[];
  /** What to do, by the time of day, for the trees in danger. */
  readonly timetable: readonly TimetableEntry[];
}

const STANDING_WORDS: readonly string[] = [
  t`A forecast or warning in force goes before anything here. Read it again in the afternoon.`,
  t`Thresholds are not switches, and a yard is not the station: take "close" as a warning.`,
  t`Lay covers by daylight, with poles, two people; no climbing on ice or at night.`,
  t`No heater, charcoal or flame under a cover or indoors.`,
];

const TAKEN: Readonly<Record<Level, string>> = {
  fruit: t`its fruit`,
  leaf: t`its leaves and twigs`,
  wood: t`its limbs`,
  kill: t`its life`,
};

/**
 * What tonight threatens, tree by tree, and what to do when. Below 10 mph the night counts as calm, from there on as windy:
 * a forecast tells one wind, where the record's nights between 5 and 10 mph count as unclear.
 * @throws InputError for a forecast that can't be, or an unknown cover
 */
export function tonight(forecast: TonightForecast, trees: readonly TonightTree[]): Tonight {
  checkForecast(forecast);
  const kind = kindOf(forecast.wind);
  const judged = trees
    .map((own) => ({ own, answer: answerFor(own, forecast, kind) }))
    .sort((a, b) => byNeed(a.answer, b.answer));
  const inDanger = judged.filter(({ answer }) => answer.worstBare !== null);
  return {
    kind,
    safety: STANDING_WORDS,
    trees: judged.map(({ answer }) => answer),
    timetable: timetable(
      inDanger.map(({ own: { label, cover, tree } }) => ({ label, cover, container: tree.container })),
      kind,
    ),
  };
}

/** The worst level in danger first, then the smaller margin to it. */
function byNeed(a: TonightAnswerForTree, b: TonightAnswerForTree): number {
  return depth(b.worstBare) - depth(a.worstBare) || nearest(a) - nearest(b);
}

function kindOf(wind: TonightForecast['wind']): 'calm' | 'windy' {
  if (typeof wind !== 'number') return wind;
  if (!(wind >= 0 && wind <= 60))
    throw new InputError(t`The wind must lie between 0 and 60 m/s, not ${sayFigureText(String(wind))}.`);
  return wind >= WINDY_FROM_MS ? 'windy' : 'calm';
}

function answerFor(
  one: TonightTree,
  forecast: TonightForecast,
  kind: 'calm' | 'windy',
): TonightAnswerForTree {
  const levels = LEVELS.map((level) => levelTonight(one, level, forecast, kind));
  const worstBare = worst(levels, 'bare');
  const worstCovered = worst(levels, 'covered');
  const refused = refusals(one.cover, one.tree);
  return { label: one.label, levels, worstBare, worstCovered, need: needOf(one, levels), refused };
}

function levelTonight(
  { type, tree, without, withCover }: TonightTree,
  level: Level,
  forecast: TonightForecast,
  kind: 'calm' | 'windy',
): TonightLevel {
  const { centreC, hours } = type.thresholds[level];
  const limit = toHundredths(centreC + totalPenaltyC(penaltiesAt(level, type, tree)));
  const open = toHundredths(sustainedTonightC(forecast, hours));
  const gain = (gains: LevelGains): number =>
    toHundredths(gains[level][kind === 'calm' ? 'calmC' : 'windyC']);
  const bare = open + gain(without) - limit;
  const covered = open + gain(withCover) - limit;
  return {
    level,
    hours,
    limitC: limit / 100,
    openC: open / 100,
    bareMarginC: bare / 100,
    coveredMarginC: covered / 100,
    bare: danger(bare),
    covered: danger(covered),
  };
}

function danger(margin: number): Danger {
  if (margin <= 0) return 'lost';
  return margin <= toHundredths(ACTION_MARGIN_C) ? 'close' : 'clear';
}

function worst(levels: readonly TonightLevel[], with_: 'bare' | 'covered'): Level | null {
  return levels.filter((one) => one[with_] !== 'clear').at(-1)?.level ?? null;
}

function depth(level: Level | null): number {
  return level === null ? -1 : LEVELS.indexOf(level);
}

/** Margin of the worst level in danger, of the nearest one where none is. */
function nearest({ levels, worstBare }: TonightAnswerForTree): number {
  const margins = levels.filter(({ level }) => worstBare === null || level === worstBare);
  return Math.min(...margins.map(({ bareMarginC }) => bareMarginC));
}

function needOf({ tree, cover }: TonightTree, levels: readonly TonightLevel[]): string {
  const bare = taken(levels, 'bare');
  if (bare === '') return t`Needs nothing tonight.`;
  const chosen = cover.length > 0;
  const covered = taken(levels, 'covered');
  const killed = levels.some(({ level, bare: at }) => level === 'kill' && at !== 'clear');
  return [
    t`Bare: ${bare}.`,
    chosen && covered === '' && t`With its cover on it comes through.`,
    chosen && covered !== '' && t`Even covered: ${covered}.`,
    !chosen && t`No cover is chosen for it.`,
    tree.container && covered !== '' && t`Bring the pot indoors.`,
    !tree.container && !chosen && killed && t`Bank soil over the graft, so that at least the trunk lives.`,
  ]
    .filter(Boolean)
    .join(' ');
}

/** `would lose its fruit and its leaves and twigs; its limbs close`; empty where nothing is in danger. */
function taken(levels: readonly TonightLevel[], with_: 'bare' | 'covered'): string {
  const at = (wanted: Danger): string =>
    levels
      .filter((one) => one[with_] === wanted)
      .map(({ level }) => TAKEN[level])
      .join(', ');
  const lost = at('lost');
  const close = at('close');
  return [lost && t`likely to lose ${lost}`, close && t`close to losing ${close}`].filter(Boolean).join('; ');
}
