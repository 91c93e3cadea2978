import type { KeptNights } from '../records/kept-nights.ts';
import { NIGHT_KINDS, type NightKind } from '../records/nights.ts';
import type { WinterTable } from '../records/winters.ts';
import type { DayNumber } from '../units/calendar.ts';
import { fahrenheitDifferenceToCelsius, toHundredths } from '../units/temperature.ts';
import { hitNights } from '../winter/hit-nights.ts';
import { gainsByKindC, type Gains } from '../winter/winter-minima.ts';

/** A cover goes on when the night may come within this of the limit, because forecasts err: 2 °F. */
export const ACTION_MARGIN_C = fahrenheitDifferenceToCelsius(2);

/** Which loss the cover is to prevent, and the gains without and with it (spot included, the joint cap applied); °C. */
export interface CoverQuestion {
  /** Hours of the threshold, one of SUSTAINED_HOURS. */
  readonly hours: number;
  /** Threshold plus penalties. */
  readonly limitC: number;
  readonly without: Gains;
  readonly withCover: Gains;
}

/** `saved`: a hit without the cover, none with it; `lost`: a hit even so; `only covered`: near the limit, no hit. */
export type CoverOutcome = 'saved' | 'lost' | 'only covered';

/** One night on which the cover would have gone on. */
export interface CoverNight {
  readonly day: DayNumber;
  readonly winter: number;
  /** False: its winter isn't in the means. */
  readonly complete: boolean;
  readonly kind: NightKind;
  /** Air's minimum without any gain, °C. */
  readonly minimumC: number;
  /** Sustained cold with the spot's gain, and with the cover's too, °C. */
  readonly bareC: number;
  readonly coveredC: number;
  readonly outcome: CoverOutcome;
  /** Number of the spell of nights to cover, from 1. */
  readonly spell: number;
}

/** One winter's work and what came of it; spells of nights to cover. */
export interface CoverWinter {
  readonly winter: number;
  readonly complete: boolean;
  readonly toCover: number;
  readonly saved: number;
  readonly lost: number;
  readonly spells: number;
}

/** A count of nights over the complete winters. */
export interface Burden {
  readonly total: number;
  /** `null` without a complete winter. */
  readonly perWinter: number | null;
  /** The complete winter with most, the earlier of equals; `null` where there was none at all. */
  readonly worst: { readonly winter: number; readonly nights: number } | null;
}

/** What a cover would have meant over the record. */
export interface CoverRecord {
  readonly completeWinters: number;
  readonly toCover: Burden;
  readonly saved: Burden;
  readonly lost: Burden;
  /** Spells of nights to cover: how often the work starts anew. */
  readonly spells: Burden;
  /** By winter, those with a night to cover only, incomplete ones too. */
  readonly winters: readonly CoverWinter[];
  /** By date, incomplete winters too. */
  readonly nights: readonly CoverNight[];
}

/**
 * Nights to cover, saved and lost. A night is to be covered when its sustained cold with the spot's gain is at or below
 * the limit plus 2 °F; nights near the limit are judged as the count of hits judges them.
 * @throws RangeError for hours that aren't kept, or a cover that gains less than nothing
 */
export function coverNights(
  nights: KeptNights,
  winters: Pick<WinterTable, 'winter' | 'complete'>,
  { hours, limitC, without, withCover }: CoverQuestion,
): CoverRecord {
  const limit = toHundredths(limitC);
  const extra = extraByKind(without, withCover);
  const complete = new Set(winters.winter.filter((_, w) => winters.complete[w] === 1));
  const actionC = (limit + toHundredths(ACTION_MARGIN_C)) / 100;
  const list = hitNights(nights, { hours, limitC: actionC, gains: without }).map((night): CoverNight => {
    const { day, winter, kind, minimumC, levelC, spell } = night;
    const bare = toHundredths(levelC);
    const covered = bare + extra[NIGHT_KINDS.indexOf(kind)];
    const outcome = covered <= limit ? 'lost' : bare <= limit ? 'saved' : 'only covered';
    return {
      day,
      winter,
      complete: complete.has(winter),
      kind,
      minimumC,
      bareC: levelC,
      coveredC: covered / 100,
      outcome,
      spell,
    };
  });
  const byWinter = wintersOf(list);
  const counted = byWinter.filter((winter) => winter.complete);
  const burden = (count: 'toCover' | 'saved' | 'lost' | 'spells'): Burden =>
    burdenOf(
      counted.map((winter) => ({ winter: winter.winter, nights: winter[count] })),
      complete.size,
    );
  return {
    completeWinters: complete.size,
    toCover: burden('toCover'),
    saved: burden('saved'),
    lost: burden('lost'),
    spells: burden('spells'),
    winters: byWinter,
    nights: list,
  };
}

/** What the cover adds on each kind of night, hundredths of °C, rounded as the count of hits rounds gains. */
function extraByKind(without: Gains, withCover: Gains): readonly number[] {
  const bare = gainsByKindC(without).map(toHundredths);
  const extra = gainsByKindC(withCover).map((gain, kind) => toHundredths(gain) - bare[kind]);
  if (extra.some((gain) => gain < 0))
    throw new RangeError('With the cover a night must not gain less than without.');
  return extra;
}

function wintersOf(nights: readonly CoverNight[]): CoverWinter[] {
  const byWinter = new Map<number, CoverNight[]>();
  for (const night of nights) byWinter.set(night.winter, [...(byWinter.get(night.winter) ?? []), night]);
  return [...byWinter].map(([winter, its]) => ({
    winter,
    complete: its[0].complete,
    toCover: its.length,
    saved: its.filter(({ outcome }) => outcome === 'saved').length,
    lost: its.filter(({ outcome }) => outcome === 'lost').length,
    spells: new Set(its.map(({ spell }) => spell)).size,
  }));
}

function burdenOf(winters: readonly { winter: number; nights: number }[], complete: number): Burden {
  const total = winters.reduce((sum, { nights }) => sum + nights, 0);
  const worst = winters.reduce<Burden['worst']>(
    (most, one) => (one.nights > (most?.nights ?? 0) ? one : most),
    null,
  );
  return { total, perWinter: complete === 0 ? null : total / complete, worst };
}
