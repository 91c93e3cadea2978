import { sayMonth } from '../language/dates.ts';
import { t } from '../language/t.ts';
import type { CitrusType } from '../tree/catalogue.ts';
import type { HarvestWindow } from '../tree/harvest.ts';
import { seasonDayText } from '../winter/season-day.ts';
import type { Hemisphere } from '../winter/winter-year.ts';
import type { Pair } from './choosing.ts';
import { CROP, tenthsText, toldTenths, type Offer } from './choose-offer.ts';

/** Of the winters that take the crop of the one that loses fewer, the part that may take the other's too (design choice). */
const SHARED_AT_MOST = 2 / 3;

/** Pairs told of. */
const PAIRS_TOLD = 3;

export interface Paired {
  readonly type: CitrusType;
  readonly offer: Offer;
}

interface Weighed extends Pair {
  readonly months: number;
}

/**
 * The best pairs: together they give fruit in more months than the longer alone, and where both lose crops, no more than
 * two thirds of the winters that take those of the one that loses fewer take the other's too. Fewest winters that take both crops first, then most
 * months with fruit; the order given of equals. Winters not known to both are left out.
 */
export function pairsOf(candidates: readonly Paired[], hemisphere: Hemisphere): readonly Pair[] {
  const weighed = candidates.flatMap((a, i) =>
    candidates.slice(i + 1).flatMap((b) => weigh(a, b, hemisphere) ?? []),
  );
  return weighed
    .sort((a, b) => a.bothLost - b.bothLost || b.months - a.months)
    .slice(0, PAIRS_TOLD)
    .map(({ months: _, ...pair }) => pair);
}

/** Months (1-12) in which a type has ripe fruit, in order. */
export function harvestMonths({ fromDay, toDay }: HarvestWindow, hemisphere: Hemisphere): readonly number[] {
  const [from, to] = [fromDay, toDay].map((day) => Number(seasonDayText(day, hemisphere).slice(0, 2)));
  return Array.from({ length: ((to - from + 12) % 12) + 1 }, (_, k) => ((from - 1 + k) % 12) + 1);
}

function weigh(one: Paired, other: Paired, hemisphere: Hemisphere): Weighed | null {
  const lost = lostTogether(one.offer.cropsByWinter, other.offer.cropsByWinter);
  if (lost.winters === 0) return null;
  const fewer = Math.min(lost.first, lost.second);
  if (lost.both > SHARED_AT_MOST * fewer) return null;
  const [a, b] = other.offer.harvest.fromDay < one.offer.harvest.fromDay ? [other, one] : [one, other];
  const [monthsA, monthsB] = [a, b].map(({ offer }) => harvestMonths(offer.harvest, hemisphere));
  const months = new Set([...monthsA, ...monthsB]).size;
  const overlap = months < monthsA.length + monthsB.length;
  const longest = Math.max(monthsA.length, monthsB.length);
  const [spanA, spanB] = [span(monthsA), span(monthsB)];
  if (months <= longest) return null;
  const ifIndependent = (lost.first / lost.winters) * (lost.second / lost.winters);
  return {
    typeIds: [a.type.id, b.type.id],
    bothLost: lost.both / lost.winters,
    ifIndependent,
    months,
    harvest: overlap
      ? t`${spanA} and ${spanB}: fruit in ${months} months of the year.`
      : t`${spanA}, then ${spanB}: fruit in ${months} months of the year.`,
    rule: `${ruleOf(lost, ifIndependent)} ${t`Together they bear in ${months} months, the longer of them alone in ${longest}.`}`,
  };
}

interface LostTogether {
  readonly winters: number;
  readonly first: number;
  readonly second: number;
  readonly both: number;
}

function lostTogether(one: Uint8Array, other: Uint8Array): LostTogether {
  let [winters, first, second, both] = [0, 0, 0, 0];
  for (let w = 0; w < Math.min(one.length, other.length); w++) {
    if (one[w] === CROP.unknown || other[w] === CROP.unknown) continue;
    winters++;
    if (one[w] === CROP.lost) first++;
    if (other[w] === CROP.lost) second++;
    if (one[w] === CROP.lost && other[w] === CROP.lost) both++;
  }
  return { winters, first, second, both };
}

function ruleOf({ winters, first, second, both }: LostTogether, ifIndependent: number): string {
  const of = `${winters} ${winters === 1 ? t`winter` : t`winters`}`;
  if (first === 0 && second === 0) return t`Grown trees lost neither crop in ${of}.`;
  if (first === 0 || second === 0)
    return t`Grown trees lost both crops in 0 of ${of}: one of the two never lost its own.`;
  const unconnected = tenthsText(toldTenths(ifIndependent * winters));
  return t`Grown trees lost both crops in ${both} of ${of} (${first} and ${second} each by itself); were the losses unconnected it would be about ${unconnected}.`;
}

function span(months: readonly number[]): string {
  if (months.length === 12) return t`all year`;
  const [from, to] = [months[0], months[months.length - 1]].map((month) => sayMonth(month));
  return from === to ? from : t`${from} to ${to}`;
}
