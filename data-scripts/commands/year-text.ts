import type { DateChance, FreezeDates, TypeYear, YearAnswer } from '../../analysis/answer/year.ts';
import { celsiusToFahrenheit } from '../../analysis/units/temperature.ts';
import { alignColumns } from './align-columns.ts';

/** The year for a terminal: dates of cold in the open, then one row a type. */
export function yearLines(year: YearAnswer): string[] {
  const chances = year.freezes[0]?.first.map(({ chance }) => `${Math.round(100 * chance)} %`) ?? [];
  const header = [
    'cold at or below',
    'none in',
    ...chances.map((c) => `first ${c}`),
    ...chances.map((c) => `last ${c}`),
  ];
  return [
    `Dates of cold over ${year.winters} winters: first, in so many of ten winters by; last, in so many on or after. MM-DD.`,
    ...year.notes,
    '',
    ...alignColumns([header, ...year.freezes.map(freezeRow)]),
    '',
    `Harvest by the months of ${year.calendar === 'gulf' ? 'the Gulf coast' : 'California'}; leaf cold at each type's own limit.`,
    '',
    ...alignColumns([
      [
        'type',
        'first leaf cold 10 %',
        'last 10 %',
        'no leaf cold in',
        'ripe',
        'crop lost before ripe',
        'by the end',
        'pick by',
      ],
      ...year.types.map(typeRow),
    ]),
    '',
  ];
}

function freezeRow({ limit_c, hours, share_without, first, last }: FreezeDates): string[] {
  const held = hours === 0 ? '' : ` for ${hours} h`;
  return [
    `${limit_c.toFixed(1)} °C (${celsiusToFahrenheit(limit_c).toFixed(0)} °F)${held}`,
    percent(share_without),
    ...[...first, ...last].map((date) => (share_without === null ? 'not known' : dateCell(date))),
  ];
}

function typeRow({ name, levels, harvest }: TypeYear): string[] {
  const leaf = levels.find(({ level }) => level === 'leaf')?.dates;
  const tenth = (dates: readonly DateChance[] | undefined): string => {
    const found = dates?.find(({ chance }) => chance === 0.1);
    return found ? dateCell(found) : '';
  };
  return [
    name,
    tenth(leaf?.first),
    tenth(leaf?.last),
    leaf ? percent(leaf.share_without) : '',
    `${harvest.from} to ${harvest.to}`,
    percent(harvest.lost_before_ripe),
    percent(harvest.lost_before_end),
    harvest.safe_to_the_end ? 'any time' : (harvest.pick_by ?? 'no day is safe'),
  ];
}

function dateCell({ date }: DateChance): string {
  return date ?? 'rarer';
}

function percent(share: number | null): string {
  return share === null ? '?' : `${Math.round(100 * share)} %`;
}
