import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { gunzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { DATE_CHANCES } from '../../../analysis/answer/year.ts';
import { fahrenheitToCelsius } from '../../../analysis/units/temperature.ts';
import { datedWinters, winterDates } from '../../../analysis/winter/dated-winters.ts';
import { seasonDates } from '../../../analysis/winter/season-dates.ts';
import { NO_GAINS } from '../../../analysis/winter/winter-minima.ts';
import { winterDraws } from '../../../analysis/winter/winter-draws.ts';
import { REAL_DATA } from '../../real-data/real-records.ts';
import reference from '../../reference/dates/r-values.json';
import ways from '../../reference/dates/ways.json';
import { completeWinters, nightsByDate } from './nights-by-date.ts';

describe('real records', () => {
  const folder = path.join(REAL_DATA, 'reference-series');
  const have = existsSync(folder);
  if (!have) console.log(`Skipping dates of Fort Collins and Denver: ${folder} isn't there.`);
  const files = {
    fort_collins: { file: 'fort_collins_1900-1999.csv.gz', columns: ['Year', 'Mn', 'Dy', 'MnT'] },
    denver: { file: 'denver_daily_min_1949-1999.csv.gz', columns: ['Year', 'Mon', 'Day', 'Min'] },
  };

  it.skipIf(!have)("Fort Collins and Denver come out as in R's reckoning of the same files", () => {
    for (const [series, { file, columns }] of Object.entries(files)) {
      const [head, ...lines] = gunzipSync(readFileSync(path.join(folder, file)))
        .toString()
        .trim()
        .split('\n')
        .map((line) => line.replaceAll('"', '').split(','));
      const at = columns.map((column) => head.indexOf(column));
      const rows = lines.flatMap((cells): [string, number][] => {
        const [year, month, day, f] = at.map((i) => cells[i]);
        const date = `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
        return f === '' || f === 'NA' ? [] : [[date, fahrenheitToCelsius(Number(f))]];
      });
      const nights = nightsByDate(rows);
      for (const expected of reference.series.filter((row) => row.series === series)) {
        const table = datedWinters(completeWinters(2000 - expected.winters, 1999), 'north');
        const limitC = fahrenheitToCelsius(expected.limit_f);
        const own = winterDates(nights, table, { hours: 0, limitC, gains: NO_GAINS }, 'north');
        const answer = seasonDates(own, winterDraws(own.first.length, 1, 1), DATE_CHANCES);
        const name = `${series} ${expected.limit_f}`;
        expect(answer.without, name).toBe(expected.without);
        expect([answer.earliest, answer.latest], name).toEqual([expected.earliest, expected.latest]);
        answer.first.forEach(({ day }, c) => near(day, expected.first[c], name));
        answer.last.forEach(({ day }, c) => near(day, expected.last[c], name));
      }
    }
  });

  function near(day: number | null, expected: number | null, name: string): void {
    if (expected === null || day === null) expect(day, name).toBe(expected);
    else expect(day, name).toBeCloseTo(expected, 6);
  }
});

describe('the way chosen among others', () => {
  it('keeps its promise on winters left out better than the normal distribution, at a loss within half a percent', () => {
    for (const row of ways.rows.filter(({ way }) => way === 'weibull')) {
      const normal = ways.rows.find(
        ({ way, which, kept }) => way.startsWith('normal') && which === row.which && kept === row.kept,
      )!;
      const off = (come: Record<string, number>) =>
        Object.entries(come).reduce((sum, [chance, share]) => sum + Math.abs(share - Number(chance)), 0);
      expect(off(row.come)).toBeLessThan(off(normal.come));
      expect(row.loss_days / normal.loss_days).toBeLessThan(1.005);
    }
  });
});
