import { t } from '../language/t.ts';
import { InputError } from '../records/input-error.ts';
import { blendMeasured } from '../spot/measured-offset.ts';
import { readMeasuredText } from '../spot/measured-text.ts';
import type { MechanismId } from '../spot/mechanism.ts';
import { findNamedSpot, NAMED_SPOTS } from '../spot/named-spots.ts';
import { offsetAt, prepareYard } from '../spot/offset-at.ts';
import { namedSpotAt, pointOfSpot } from '../spot/spot-text.ts';
import { readYardText } from '../spot/yard-text.ts';
import type { PlanPoint, Yard } from '../spot/yard.ts';
import { NO_GAIN_SPREAD, type GainSpread } from '../winter/gain-spread.ts';
import type { ProtectionTexts } from './protection.ts';

/** The spot a tree stands on: what it gains and what that rests on. */
export interface StandingSpot {
  readonly gain: GainSpread;
  /** `sun-facing masonry wall of a heated house`; empty in the open. */
  readonly words: string;
  /** What makes it milder or colder, as far as known. */
  readonly mechanisms: readonly MechanismId[];
}

export const IN_THE_OPEN: StandingSpot = { gain: NO_GAIN_SPREAD, words: '', mechanisms: [] };

/** The spot of the texts: named, or a point of the yard, with what an own thermometer measured there. @throws InputError */
export function standingSpot(texts: ProtectionTexts): StandingSpot {
  const told = toldSpot(texts);
  if (texts.measured === null) return told;
  const gain = blendMeasured(told.gain, readMeasuredText(texts.measured));
  return {
    ...told,
    gain,
    words:
      told.words === '' ? t`the place measured by own readings` : t`${told.words}, measured by own readings`,
  };
}

function toldSpot({ spot, yard, hemisphere }: ProtectionTexts): StandingSpot {
  if (spot === null) return IN_THE_OPEN;
  const inYard = pointOfSpot(spot);
  if (inYard) {
    if (yard === null)
      throw new InputError(t`Spot "${spot}" is a point of a yard, but no yard came with it.`);
    return yardSpot(readYardText(yard), inYard, hemisphere);
  }
  const named = findNamedSpot(spot);
  if (!named) {
    const known = NAMED_SPOTS.map(({ id }) => id).join(', ');
    throw new InputError(t`There is no spot "${spot}"; choose among ${known}, or a spot of a yard.`);
  }
  if (named.id === 'open') return IN_THE_OPEN;
  const mechanisms: readonly MechanismId[] = named.id === 'bare-ground' ? ['bare-ground'] : [];
  return { gain: named.gain, words: named.name.toLowerCase(), mechanisms };
}

function yardSpot(yard: Yard, at: PlanPoint, hemisphere: ProtectionTexts['hemisphere']): StandingSpot {
  const [east, north] = at;
  if (!(east >= 0 && east <= yard.widthM && north >= 0 && north <= yard.depthM)) {
    throw new InputError(
      t`The spot ${east}, ${north} m lies outside the yard of ${yard.widthM} by ${yard.depthM} m.`,
    );
  }
  // Only the side of the midday sun matters here, and that is all the hemisphere says.
  const { gain, mechanisms } = offsetAt(prepareYard(yard, hemisphere === 'north' ? 1 : -1), at);
  const named = namedSpotAt(yard, at);
  const where = named?.name ?? t`${east} m east, ${north} m north`;
  const words = t`${where} in the yard “${yard.name}”`;
  return { gain, words, mechanisms: mechanisms.map(({ id }) => id) };
}
