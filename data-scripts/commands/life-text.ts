import type { AgeShare, LifeAnswer, LifeReading, TypeLife } from '../../analysis/answer/life.ts';
import { alignColumns } from './align-columns.ts';

/** The life of trees for a terminal: one row a type, the colder reading before the milder. */
export function lifeLines(life: LifeAnswer): string[] {
  const { start_age_years: age, picking, winters } = life;
  const header = [
    'type',
    'reading',
    'first crop',
    'bears',
    '10 years',
    '20 years',
    'half live',
    'crops in 10',
  ];
  return [
    `A tree planted in each of ${winters.length} winters, counting ${age} ${age === 1 ? 'year' : 'years'} in its first, its crop picked ${picking}.`,
    'Share living [90 % range] {living of those followed so far}; crops in the first ten winters: median (worst tenth).',
    ...life.notes,
    '',
    ...alignColumns([header, ...life.types.flatMap(typeRows)]),
    ...life.types.flatMap(coveredLine),
    '',
  ];
}

function typeRows(type: TypeLife): string[][] {
  const row = (name: string, words: string, reading: LifeReading): string[] => [
    name,
    words,
    `winter ${type.first_crop_year}`,
    ...[reading.first_crop, reading.ten_years, reading.twenty_years].map(shareCell),
    yearsCell(reading),
    cropsCell(reading),
  ];
  return [row(type.name, 'night by night', type.night_by_night), row('', 'hardened', type.hardened)];
}

/** How often the cover would have gone on, where there is one. */
function coveredLine({ name, night_by_night: { nights_covered: nights } }: TypeLife): string[] {
  if (nights === null) return [];
  return [
    `${name}: the cover goes on over a living tree on ${nights.mean.toFixed(1)} nights a winter, ${nights.worst} in the worst (night by night).`,
  ];
}

function shareCell({ share, low, high, alive, followed }: AgeShare): string {
  if (share === null) return 'not known';
  const range = low === null || high === null ? '' : ` [${percent(low)}-${percent(high)}]`;
  // A share of 1 is what was seen, not what is certain.
  const told = share === 1 ? `at least ${percent(low)}` : `${percent(share)} %${range}`;
  return `${share === 1 ? `${told} %` : told} {${alive}/${followed}}`;
}

/** Whole per cents; what is below 1 is never told as 100, what is above 0 never as none. */
function percent(share: number | null): string {
  if (share === null) return '?';
  const rounded = Math.round(100 * share);
  if (rounded === 0 && share > 0) return '<1';
  return String(rounded === 100 && share < 1 ? 99 : rounded);
}

function yearsCell({ median_years: { years } }: LifeReading): string {
  return years === null ? 'longer' : `${years} ${years === 1 ? 'year' : 'years'}`;
}

function cropsCell({ crops_in_ten: crops }: LifeReading): string {
  return crops === null ? 'not known' : `${crops.median} (${crops.worst_tenth})`;
}
