import { WALL_SPOT } from '../../analysis/answer/advice-customer.ts';
import { AdviceHere, type AskedOfCustomer, type CounterQuestion } from '../../analysis/answer/advice-here.ts';
import { adviceNights } from '../../analysis/answer/advice-nights.ts';
import { lifePlace } from '../../analysis/answer/life-place.ts';
import { gainsOnSpot, readProtection, type Protection } from '../../analysis/answer/protection.ts';
import { IN_THE_OPEN, standingSpot, type StandingSpot } from '../../analysis/answer/standing-spot.ts';
import type { Subject } from '../../analysis/answer/subject.ts';
import { isCoverId, writtenCovers } from '../../analysis/cover/cover-ids.ts';
import type { Steps } from '../../analysis/math/steps.ts';
import { CITRUS_TYPES, findType } from '../../analysis/tree/catalogue.ts';
import { hemisphereOf } from '../../analysis/winter/winter-year.ts';
import type { CounterAnswer, CounterAsk, CounterNights } from '../state/counter-port.ts';
import type { LifeQuestion, Protected } from '../state/ports.ts';

/** The last spot asked about at a place, with its fits: an answer of the buyer then costs little. */
const kept = new WeakMap<Subject, { readonly spot: string; readonly here: AdviceHere }>();

/** The class of every row. */
export function* counterAdvice(subject: Subject, ask: CounterAsk): Steps<CounterAnswer> {
  const { winters, place, evidence, notes } = subject;
  const used = [...winters.winter].filter((_, w) => winters.complete[w] === 1);
  return {
    rows: adviceAt(subject, ask).rows(questionOf(ask)),
    place,
    winters: { used: used.length, first: used[0] ?? null, last: used.at(-1) ?? null },
    evidence,
    notes,
    problems: protectionOf(ask)?.problems ?? [],
  };
}

/** The questions to the buyer. */
export function counterQuestions(subject: Subject, ask: CounterAsk): Steps<readonly AskedOfCustomer[]> {
  return adviceAt(subject, ask).asking(questionOf(ask));
}

/** Nights to cover and to bring a pot in, on both spots. */
export function* countedNights(subject: Subject, question: LifeQuestion): Steps<CounterNights> {
  const { nights, planting, tree } = question;
  const place = lifePlace(subject, nights, planting);
  const { page, wall } = spotsOf(subject, question);
  const counted = (spot: StandingSpot) =>
    adviceNights(place, CITRUS_TYPES, { tree, planting, spotGains: gainsOnSpot(spot, []) });
  const onPage = counted(page);
  yield 0.5;
  return { page: onPage, wall: counted(wall) };
}

function questionOf(ask: CounterAsk): CounterQuestion {
  const { tree, answers, nights, protection } = ask;
  return {
    rows: ask.rows.flatMap(({ key, typeId, ageYears }) => {
      const type = findType(typeId);
      return type ? [{ key, type, ageYears }] : [];
    }),
    tree,
    pageCovers: writtenCovers(protection?.cover ?? null).filter(isCoverId),
    hasSpot: protection !== null && (protection.spot !== null || protection.measured !== null),
    answers,
    nights: { page: nights?.page ?? null, wall: nights?.wall ?? null },
  };
}

function adviceAt(subject: Subject, ask: Protected): AdviceHere {
  const spot = JSON.stringify({ ...ask.protection, cover: null, container: false });
  const last = kept.get(subject);
  if (last?.spot === spot) return last.here;
  const here = new AdviceHere(subject, spotsOf(subject, ask));
  kept.set(subject, { spot, here });
  return here;
}

function spotsOf(
  subject: Subject,
  ask: Protected,
): { readonly page: StandingSpot; readonly wall: StandingSpot } {
  const texts = { yard: null, measured: null, cover: null, container: false };
  const hemisphere = hemisphereOf(subject.place.lat);
  return {
    page: protectionOf(ask)?.spot ?? IN_THE_OPEN,
    wall: standingSpot({ ...texts, spot: WALL_SPOT, hemisphere }),
  };
}

/** Of the page's spot alone: its cover is one of the plans. */
function protectionOf({ protection }: Protected): Protection | null {
  return protection && readProtection({ ...protection, cover: null, container: false });
}
