import { rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Assessment } from '../../../analysis/answer/assessment.ts';
import { BATCH_COLUMNS } from '../../../analysis/answer/batch-table.ts';
import { readAssessOptions } from '../../../data-scripts/commands/assess-options.ts';
import { UsageError } from '../../../data-scripts/commands/run-command.ts';
import { command, type Outcome } from './command.ts';
import { buildInventedPack } from './invented-pack.ts';

let work: string;
let pack: string;

beforeAll(async () => {
  ({ work, pack } = await buildInventedPack());
}, 60_000);
afterAll(() => rm(work, { recursive: true, force: true }));

const TYPES = ['--types', 'satsuma_owari,meyer_lemon'];
/** Five rows that can't be answered among four that can. */
const CUSTOMERS = [
  'cliente;Código Postal;latitud;longitud;altitud_m;etiqueta',
  '=1+1;zz1;;;;First',
  '2;ZZ 7;;;;',
  '3;;91;-42;;',
  ';;;;;',
  '4;;31,02;-42,01;40;Fourth; with more',
  '5;;31;-42;low;',
  '6;;-10;10;;Far',
  '7;;31,1;-42,1;;"Seventh; quoted"',
  '8;ZZ 1;;;;Eighth',
];

async function batch(lines: readonly string[], ...args: string[]): Promise<Outcome> {
  const file = path.join(work, 'customers.csv');
  await writeFile(file, `${lines.join('\r\n')}\r\n`);
  return command('assess', '--pack', pack, '--batch', file, ...args);
}
const bad = ({ err }: Outcome) => err.split('\n').filter((line) => line.startsWith('customers.csv, line'));

describe('assess --batch', () => {
  it('answers the good rows, lists the bad ones, and is the same by one thread and by several', async () => {
    const one = await batch(CUSTOMERS, ...TYPES, '--threads', '1');
    expect(one.code).toBe(0);
    const [header, ...rows] = one.out.trim().split('\n');
    expect(header).toBe(BATCH_COLUMNS.join(','));
    expect(rows).toHaveLength(8);
    expect(rows[0]).toMatch(/^2,'=1\+1,First,ZZ 1,31.02,-42.01,/);
    expect(rows[2]).toMatch(/^6,4,Fourth,,31.02,-42.01,40,history,/);
    expect(rows[4]).toMatch(/^9,7,"Seventh; quoted",,31.1,-42.1,,history,Invented ZZTEST4,0,0,/);
    expect(bad(one).map((line) => line.replace('customers.csv, line ', ''))).toEqual([
      '3: the postcode is not in the pack, which has 1 (ZZ 7)',
      '4: latitude 91 is beyond 90 degrees (3;;91;-42;;)',
      '5: the row is empty (;;;;;)',
      '7: elevation "low" is not a number (5;;31;-42;low;)',
      expect.stringMatching(
        /^8: -10, 10 is \d+ km from the nearest station \(ZZTEST\d\); the limit is 100 km \(Far\)$/,
      ),
    ]);
    expect(one.err).toContain('4 of 9 rows answered');
    // One gives its height, one stands at a station.
    expect(one.err).toContain("The height of 2 of them isn't known");
    const several = await batch([CUSTOMERS[0], ...CUSTOMERS.slice(1).reverse()], ...TYPES, '--threads', '3');
    const withoutLine = (out: string) =>
      out
        .trim()
        .split('\n')
        .map((line) => line.replace(/^\d+,/, ''))
        .sort();
    expect(withoutLine(several.out)).toEqual(withoutLine(one.out));
  });

  it('says of a place what assess says of it alone', async () => {
    const told = await batch(CUSTOMERS, ...TYPES, '--age', '3', '--cover', 'cloth-light,tied', '--json');
    const { rows } = JSON.parse(told.out) as { rows: Record<string, number | string | null>[] };
    const alone = await command(
      ...(['assess', '--pack', pack, '--at', '31.02,-42.01,40', ...TYPES, '--age', '3'] as const),
      ...['--cover', 'cloth-light,tied', '--json'],
    );
    const answer = JSON.parse(alone.out) as Assessment;
    for (const { id, levels } of answer.types) {
      const row = rows.find(({ line, type }) => line === 6 && type === id)!;
      expect(row).toMatchObject({ winters: answer.winters.used, basis: answer.place.basis });
      for (const level of ['fruit', 'leaf', 'kill']) {
        const { headline } = levels.find((one) => one.level === level)!;
        expect(row[`${level}_basis`]).toBe(headline.basis);
        if (headline.basis === 'beyond') continue;
        expect(row[`${level}_period`]).toBe(headline.period);
        expect(Math.abs(Math.log((row[`${level}_low`] as number) / headline.low!))).toBeLessThan(0.15);
      }
    }
  });

  it('refuses a file with no usable column, one without a good row, and options that tell of one place', async () => {
    const useless = await batch(['name,phone', 'a,1']);
    expect(useless).toMatchObject({ code: 1, out: '' });
    expect(useless.err).toBe(
      'assess: customers.csv has no column to go by: its first line must name a column postcode, or the columns lat and lon (it has name, phone).\n',
    );
    const none = await batch(['cp', 'nowhere']);
    expect(none).toMatchObject({ code: 1, out: '' });
    expect(none.err).toContain('customers.csv: no row could be answered');
    for (const more of [['--life'], ['--station', 'ZZTEST1'], ['--level', 'kill'], ['--years', '5']])
      expect(() => readAssessOptions(['--pack', pack, '--batch', 'x.csv', ...more])).toThrow(UsageError);
    expect(() => readAssessOptions(['--pack', pack, '--postcode', 'ZZ 1', '--threads', '2'])).toThrow(
      UsageError,
    );
  });
});
