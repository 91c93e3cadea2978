import { rm } from 'node:fs/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { LifeAnswer, LifeReading } from '../../../analysis/answer/life.ts';
import type { YearAnswer } from '../../../analysis/answer/year.ts';
import { findType } from '../../../analysis/tree/catalogue.ts';
import {
  fahrenheitDifferenceToCelsius,
  fahrenheitToCelsius,
  toHundredths,
} from '../../../analysis/units/temperature.ts';
import { command } from './command.ts';
import { buildInventedPack } from './invented-pack.ts';

const TYPES = ['satsuma_owari', 'meyer_lemon'];
let work: string;
let pack: string;
let answer: { winters: { used: number }; life: LifeAnswer; year: YearAnswer };
/** `S_4` of every kept night by winter, hundredths of °C, as `records nights` prints it. */
let nights: Map<number, number[]>;

const assess = (...args: string[]) =>
  command('assess', '--pack', pack, '--station', 'ZZTEST1', '--types', TYPES.join(','), ...args);

beforeAll(async () => {
  ({ work, pack } = await buildInventedPack());
  const outcome = await assess('--json', '--life', '--year');
  expect(outcome).toMatchObject({ code: 0, err: '' });
  answer = JSON.parse(outcome.out) as typeof answer;
  const csv = await command('records', 'nights', pack, '--station', 'ZZTEST1');
  const [header, ...rows] = csv.out
    .trim()
    .split('\n')
    .map((line) => line.split(','));
  const [winter, s4] = ['winter', 's4_c'].map((column) => header.indexOf(column));
  nights = new Map();
  for (const row of rows) {
    if (row[s4] === '') continue;
    const own = nights.get(Number(row[winter])) ?? [];
    nights.set(Number(row[winter]), [...own, toHundredths(Number(row[s4]))]);
  }
}, 120_000);
afterAll(() => rm(work, { recursive: true, force: true }));

const readings = ({ life }: typeof answer): { id: string; reading: LifeReading }[] =>
  life.types.flatMap(({ id, night_by_night, hardened }) => [
    { id, reading: night_by_night },
    { id, reading: hardened },
  ]);

describe('assess --life', () => {
  it('plants in every complete winter and gives every type asked for', () => {
    const { life, winters } = answer;
    expect(life.types.map(({ id }) => id)).toEqual(TYPES);
    expect(life.winters).toHaveLength(winters.used);
    for (const { reading } of readings(answer))
      expect(reading.plantings.map(({ winter }) => winter)).toEqual(life.winters);
  });

  it('kills trees only in winters with a night that could, and in all that must', () => {
    // Handbook: a tree of the first two years is hurt 5.5 °F sooner, one with a crop 1.5 °F; a satsuma that isn't hardened 8 °F.
    const mostF = { satsuma_owari: 8 + 1.5, meyer_lemon: 5.5 + 1.5 };
    let [killed, safe] = [0, 0];
    for (const { id, reading } of readings(answer)) {
      const limit = toHundredths(findType(id)!.thresholds.kill.centreC);
      const most = limit + toHundredths(fahrenheitDifferenceToCelsius(mostF[id as keyof typeof mostF]));
      for (const { winter, years, course, fate } of reading.plantings) {
        if (fate !== 'living') {
          expect(Math.min(...(nights.get(winter + years) ?? []))).toBeLessThanOrEqual(most + 1);
          expect(course.at(-1)).toBe('k');
          killed++;
        }
        for (let lived = winter; lived < winter + years; lived++) {
          expect(Math.min(...(nights.get(lived) ?? [Infinity]))).toBeGreaterThan(limit);
          safe++;
        }
      }
    }
    expect(killed).toBeGreaterThan(0);
    expect(safe).toBeGreaterThan(0);
  });

  it('has shares that follow from the plantings it lists, by the product-limit formula', () => {
    const whole = new Set(answer.life.winters);
    for (const { reading } of readings(answer)) {
      let share = 1;
      for (const at of reading.living) {
        const { age } = at;
        const told = reading.plantings.filter(({ course }) => course.length >= age);
        const atRisk = told.filter(({ winter }) => whole.has(winter + age - 1));
        const deaths = atRisk.filter(({ course }) => course[age - 1] === 'k').length;
        if (at.kaplan_meier === null) break;
        share *= atRisk.length === 0 ? 1 : 1 - deaths / atRisk.length;
        expect(at.kaplan_meier).toBeCloseTo(share, 12);
        expect(at.low).toBeLessThanOrEqual(at.share!);
        expect(at.high).toBeGreaterThanOrEqual(at.share!);
        expect(at.alive).toBeLessThanOrEqual(at.followed);
      }
    }
  });

  it('never promises a life: what no winter on record took keeps a low end below all', async () => {
    const outcome = await assess('--json', '--life', '--types', 'trifoliate_orange');
    const { life } = JSON.parse(outcome.out) as typeof answer;
    const { ten_years } = life.types[0].hardened;
    expect(ten_years.share).toBe(1);
    expect(ten_years.low).toBeLessThan(1);
  });

  it('prints a table, and the years a larger tree starts with', async () => {
    const young = await assess('--life');
    const older = await assess('--life', '--start-age', '4');
    expect(young).toMatchObject({ code: 0, err: '' });
    expect(young.out).toContain('A tree planted in each of');
    expect(young.out).toContain('night by night');
    expect(older.out).toContain('counting 4 years in its first');
    expect(older.out).not.toBe(young.out);
  });
});

describe('assess --year', () => {
  it('has dates in the order of their chances, in the cold months', () => {
    const day = (date: string): number => {
      const [month, ofMonth] = date.split('-').map(Number);
      return ((month + 5) % 12) * 31 + ofMonth;
    };
    const all = [
      ...answer.year.freezes,
      ...answer.year.types.flatMap(({ levels }) => levels.map(({ dates }) => dates)),
    ];
    expect(answer.year.freezes.map(({ limit_c }) => limit_c)).toEqual([0, fahrenheitToCelsius(28)]);
    for (const { first, last } of all) {
      const firsts = first.flatMap(({ date }) => (date === null ? [] : [day(date)]));
      const lasts = last.flatMap(({ date }) => (date === null ? [] : [day(date)]));
      expect(firsts).toEqual([...firsts].sort((a, b) => a - b));
      expect(lasts).toEqual([...lasts].sort((a, b) => b - a));
    }
  });

  it('is printed too', async () => {
    const outcome = await assess('--year', '--calendar', 'california');
    expect(outcome).toMatchObject({ code: 0, err: '' });
    expect(outcome.out).toContain('Harvest by the months of California');
  });
});

describe('options that make no sense', () => {
  it.each([
    [['--life', '--csv'], 2, '--csv'],
    [['--start-age', '2'], 2, '--start-age needs --life'],
    [['--picking', 'early'], 2, '--picking needs --life or --year'],
    [['--life', '--start-age', '2.5'], 1, '--start-age "2.5" is not a whole number from 1 to 5'],
    [['--life', '--start-age', '9'], 1, '--start-age "9" is not a number from 1 to 5'],
    [['--year', '--calendar', 'mars'], 1, '--calendar "mars" is not one of gulf, california'],
  ])('%j ends with %i', async (args, code, sentence) => {
    const outcome = await assess(...args);
    expect(outcome.code).toBe(code);
    expect(outcome.err).toContain(sentence);
  });
});
