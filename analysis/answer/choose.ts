import { t } from '../language/t.ts';
import { lastOf, type Steps } from '../math/steps.ts';
import type { CitrusType } from '../tree/catalogue.ts';
import type { Hemisphere } from '../winter/winter-year.ts';
import type { OfferOf } from './choose-offer.ts';
import { pairsOf } from './choose-pairs.ts';
import { bestOf, trySpot, tryWay, wishesTold, type Tried } from './choose-tried.ts';
import { coversTried, spotsTried, wayWords, type CoverTried, type OnPage } from './choose-ways.ts';
import { allMet, checkWishes, missed } from './choose-wishes.ts';
import type { Choice, Chosen, WishMet, Wishes } from './choosing.ts';

/** What is chosen from, and for whom. */
export interface Choosing {
  readonly types: readonly CitrusType[];
  readonly wishes: Wishes;
  readonly page: OnPage;
  readonly hemisphere: Hemisphere;
}

/** Those that meet the wishes and are looked at for pairs. */
const PAIRED = 8;
/** Share of the work told as done once every type has been tried on the page's spot. */
const SPOT_SHARE = 0.6;

/** Nights that are not known stand behind any that are. */
const NEVER = 1000;

/** A type and what was made of it, in the order of the catalogue. */
interface Looked {
  readonly type: CitrusType;
  readonly best: Tried;
  readonly meets: boolean;
}

/**
 * The types of the kinds asked for that meet all wishes, with the least way that does; those that miss one by a margin of
 * `NEARLY`, with what would close it; the rest, with the wish that stops them; and pairs among the first. Rules only: all
 * figures come from `offerOf`. Yields the share done, so that a worker can tell of it, or stop.
 * @throws InputError for wishes outside `WISH_LIMITS`
 */
export function* choosing(question: Choosing, offerOf: OfferOf): Steps<Chosen> {
  const { wishes, page, hemisphere } = question;
  checkWishes(wishes);
  const types = question.types.filter(({ use }) => wishes.kinds.includes(use));
  const covers = coversTried(page);
  const looked: Looked[] = [];
  for (const [i, type] of types.entries()) {
    const { tried, meets } = trySpot(type, null, covers, wishes, offerOf);
    looked.push({ type, best: meets ?? bestOf(tried), meets: meets !== null });
    yield ((i + 1) / types.length) * SPOT_SHARE;
  }
  const meet = looked.filter(({ meets }) => meets).sort(byWorth);
  const near = looked.filter(({ meets, best }) => !meets && isNear(best)).sort(byWorth);
  const told: Choice[] = [];
  for (const one of [...meet, ...near]) {
    const closing = one.meets ? null : closingOf(one, question, covers, offerOf);
    told.push({ ...choiceOf(one, wishes), closing });
    yield SPOT_SHARE + (told.length / (meet.length + near.length)) * (1 - SPOT_SHARE);
  }
  const nearly = told.slice(meet.length);
  return {
    meet: told.slice(0, meet.length),
    nearly: [
      ...nearly.filter(({ closing }) => closing !== null),
      ...nearly.filter(({ closing }) => closing === null),
    ],
    not: looked.filter(({ meets, best }) => !meets && !isNear(best)).map((one) => stoppedBy(one, covers)),
    pairs: pairsOf(
      meet.slice(0, PAIRED).map(({ type, best }) => ({ type, offer: best.offer })),
      hemisphere,
    ),
  };
}

/** The same in one go. */
export function choose(question: Choosing, offerOf: OfferOf): Chosen {
  return lastOf(choosing(question, offerOf));
}

function choiceOf({ type, best }: Looked, wishes: Wishes): Omit<Choice, 'closing'> {
  return { typeId: type.id, name: type.name, way: best.way, wishes: wishesTold(best, wishes) };
}

/** Misses exactly one wish, by no more than its margin. */
function isNear({ wishes }: Tried): boolean {
  const misses = wishes.map(missed).filter((miss) => miss > 0);
  return misses.length === 1 && misses[0] <= 1;
}

/** More living, then fewer crops lost, then fewer nights, all as told; the catalogue's order of equals. */
function byWorth(a: Looked, b: Looked): number {
  const told = ({ best: { wishes } }: Looked, which: WishMet['wish'], unknown: number): number =>
    wishes.find(({ wish }) => wish === which)?.offered ?? unknown;
  return (
    told(b, 'livingInTen', 0) - told(a, 'livingInTen', 0) ||
    told(a, 'lostCropsInTen', 10) - told(b, 'lostCropsInTen', 10) ||
    told(a, 'nightsToCover', NEVER) - told(b, 'nightsToCover', NEVER)
  );
}

/** The wish that is missed by most, and under what. */
function stoppedBy(
  { type, best: { way, wishes } }: Looked,
  covers: readonly CoverTried[],
): Chosen['not'][number] {
  const stop = wishes.reduce((worst, wish) => (missed(wish) > missed(worst) ? wish : worst));
  const strongest = covers.at(-1)?.ids === way.covers;
  const under = strongest ? t`That is under the strongest cover tried.` : t`That is ${wayWords(way)}.`;
  const rule = way.covers.length > 0 ? `${stop.rule} ${under}` : stop.rule;
  return { typeId: type.id, name: type.name, rule };
}

/** The least further way that meets all wishes: another spot, then a spot and a cover. Covers on the page's spot were tried. */
function closingOf(
  { type, best }: Looked,
  { wishes, page }: Choosing,
  covers: readonly CoverTried[],
  offerOf: OfferOf,
): Choice['closing'] {
  // Nothing makes a tree bear sooner.
  if (best.wishes.some(({ wish, met }) => wish === 'yearsToWait' && !met)) return null;
  const spots = spotsTried(page);
  const [none, ...some] = covers;
  for (const spotId of spots) {
    const bare = tryWay(type, spotId, none, wishes, offerOf);
    if (allMet(bare.wishes)) return closes(bare, wishes);
  }
  for (const spotId of spots) {
    const { meets } = trySpot(type, spotId, some, wishes, offerOf);
    if (meets) return closes(meets, wishes);
  }
  return null;
}

function closes(tried: Tried, wishes: Wishes): NonNullable<Choice['closing']> {
  const { way } = tried;
  const words = wayWords(way);
  return {
    way,
    wishes: wishesTold(tried, wishes),
    words: t`${words.charAt(0).toUpperCase() + words.slice(1)} it meets every wish.`,
  };
}
