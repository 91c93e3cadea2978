import { t } from '../language/t.ts';
/** Measures, as they are written in addresses and commands. */
export const MEASURE_IDS = [
  'watered-soil',
  'bare-soil',
  'cloth-light',
  'cloth-medium',
  'cloth-heavy',
  'sheet',
  'lights',
  'soil-bank',
  'trunk-wrap',
  'sprinkler-low',
  'sprinkler-raised',
  'wrap-sprinkler',
  'garage',
  'plastic-house',
] as const;
export type MeasureId = (typeof MEASURE_IDS)[number];

/** What a reader states about the measures chosen. */
export const CONDITIONS_OF_COVER = [
  {
    id: 'tied',
    name: t`Tied to the ground all round`,
    about: t`Cover fastened down on every side, so that wind cannot lift it. Without it a cover gains nothing in wind.`,
    effortRank: 1,
  },
  {
    id: 'lights-confirmed',
    name: t`I have checked: the lights are safe`,
    about: t`Strings outdoor-rated, outlet with ground-fault protection, every bulb clear of cloth, leaves and mulch.`,
    effortRank: 0,
  },
] as const;
export type CoverConditionId = (typeof CONDITIONS_OF_COVER)[number]['id'];

/** Things that are done and should not be: they can be chosen so that the reader is told why. */
export const WRONG_CHOICES = [
  { id: 'plastic-on-leaves', name: t`Plastic laid on the leaves` },
  { id: 'short-cover', name: t`Cover that ends above the ground` },
  { id: 'led-lights', name: t`LED light strings` },
  { id: 'open-flame', name: t`Heater, charcoal or flame under the cover` },
  { id: 'mulch-left', name: t`Mulch left under the tree` },
  { id: 'overhead-sprinkler', name: t`Sprinkler over the crown` },
] as const;
export type WrongChoiceId = (typeof WRONG_CHOICES)[number]['id'];

/** Whatever may stand in a list of covers. */
export type CoverId = MeasureId | CoverConditionId | WrongChoiceId;
export const ALL_CHOICES: readonly CoverId[] = [
  ...MEASURE_IDS,
  ...CONDITIONS_OF_COVER.map(({ id }) => id),
  ...WRONG_CHOICES.map(({ id }) => id),
];

/** Whether a text is one of them. */
export function isCoverId(text: string): text is CoverId {
  return (ALL_CHOICES as readonly string[]).includes(text);
}

/** What a list of covers such as `sheet, tied` names, known or not; `null` names none. */
export function writtenCovers(text: string | null): string[] {
  return (text ?? '')
    .split(',')
    .map((id) => id.trim())
    .filter((id) => id !== '');
}
