import { rm, writeFile } from 'node:fs/promises';
import { gzipSync } from 'node:zlib';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Assessment } from '../../../analysis/answer/assessment.ts';
import { command as commandAlone, CommandHost, type Outcome } from './command.ts';
import { buildInventedPack } from './invented-pack.ts';

let work: string;
let pack: string;
/** Most run in one process; one of each outcome, and what reads and writes a pack, as a reader runs them. */
const host = new CommandHost();
const { command } = host;

/** Last line of stderr: progress comes before it. */
const sentence = ({ err }: Outcome) => err.trim().split('\n').at(-1)!;

beforeAll(async () => {
  ({ work, pack } = await buildInventedPack());
}, 60_000);
afterAll(() => {
  host.close();
  return rm(work, { recursive: true, force: true });
});

describe('assess', () => {
  it('answers for a station, a point and a postcode, as text, CSV and JSON', async () => {
    const asked = ['--pack', pack, '--station', 'ZZTEST1', '--json'];
    const [json, inHost] = [await commandAlone('assess', ...asked), await command('assess', ...asked)];
    expect(json).toMatchObject({ code: 0, err: '' });
    expect(inHost).toEqual(json);
    const answer = JSON.parse(json.out) as Assessment;
    expect(answer.types).toHaveLength(37);
    expect(answer.winters).toMatchObject({ used: 25, first: 1991, last: 2015 });
    const csv = await command(
      'assess',
      '--pack',
      pack,
      '--at',
      '31.02,-42.01,40',
      '--types',
      'satsuma_owari',
      '--csv',
    );
    expect(csv.out.trim().split('\n')).toHaveLength(5);
    const text = await command('assess', '--pack', pack, '--postcode', 'zz1', '--level', 'wood');
    expect(text.code).toBe(0);
    expect(text.out).toMatch(/These winters are estimated from .*, most from Invented ZZTEST1, 2\.4 km away/);
    const point = await command('assess', '--pack', pack, '--postcode', 'zz1', '--json');
    const { place } = JSON.parse(point.out) as Assessment;
    expect(place).toMatchObject({ label: 'ZZ 1 Invented Quarter', basis: 'history' });
    expect(place.error_c).toBeGreaterThan(0);
    expect(answer.place.basis).toBe('station');
    expect(text.out).toContain('A forecast or warning in force goes before any statistic here.');
  });

  it('follows the tree: a young, weak one in a pot is hit in no fewer winters', async () => {
    const of = async (...tree: string[]) => {
      const { out } = await command('assess', '--pack', pack, '--station', 'ZZTEST1', '--json', ...tree);
      return (JSON.parse(out) as Assessment).types.flatMap((type) =>
        type.levels.map((level) => level.counted.hits),
      );
    };
    const mature = await of();
    const tender = await of(
      '--age',
      '1',
      '--condition',
      'weak',
      '--container',
      '--fruit-load',
      '--not-hardened',
    );
    expect(tender.every((hits, i) => hits >= mature[i])).toBe(true);
    expect(tender.reduce((a, b) => a + b, 0)).toBeGreaterThan(mature.reduce((a, b) => a + b, 0));
  });

  it.each([
    [
      'unknown type',
      ['--station', 'ZZTEST1', '--types', 'banana'],
      /unknown type "banana"; the types are citron, /,
    ],
    ['unknown postcode', ['--postcode', 'QQ 77'], /postcode "QQ 77" is not among the 1 of the pack/],
    ['unknown station', ['--station', 'ZZNONE'], /station "ZZNONE" is not in the pack, which has 4 stations/],
    ['latitude 95', ['--at', '95,10'], /--at latitude 95 is outside -90 to 90 degrees/],
    [
      'a point out of reach',
      ['--at', '10,10'],
      /is \d+ km from the nearest station \(ZZTEST\d\); the limit is 100 km/,
    ],
    [
      'a word for an age',
      ['--station', 'ZZTEST1', '--age', 'old'],
      /--age "old" is not a number from 0 to 200/,
    ],
    [
      'an unknown rootstock',
      ['--station', 'ZZTEST1', '--rootstock', 'oak'],
      /--rootstock "oak" is not one of sour-orange, /,
    ],
  ])('refuses %s with one sentence and exit code 1', async (_, args, expected) => {
    const outcome = await command('assess', '--pack', pack, ...args);
    expect(outcome).toMatchObject({ code: 1, out: '' });
    expect(outcome.err.trim().split('\n')).toHaveLength(1);
    expect(sentence(outcome)).toMatch(expected);
  });

  it.each([
    ['no pack', ['--station', 'ZZTEST1']],
    ['two places', ['--pack', 'x', '--station', 'a', '--postcode', 'b']],
    ['an unknown option', ['--pack', 'x', '--station', 'a', '--hot']],
  ])('calls %s wrong use, exit code 2', async (_, args) => {
    const outcome = await command('assess', ...args);
    expect(outcome).toMatchObject({ code: 2, out: '' });
    expect(sentence(outcome)).toContain('--help');
  });

  it('explains itself', async () => {
    const help = await command('assess', '--help');
    expect(help).toMatchObject({ code: 0, err: '' });
    expect(help.out).toContain('--not-hardened');
  });
});

describe('records', () => {
  it('prints estimated nights of a point in the same columns, and counts them in assess', async () => {
    const { code, out } = await command('records', 'nights', pack, '--at', '31.02,-42.01,40');
    expect(code).toBe(0);
    const [header, ...lines] = out.trim().split('\n');
    const rows = lines.map((line) => line.split(','));
    const columns = header.split(',');
    expect(columns).toHaveLength(19);
    expect(rows.length).toBeGreaterThan(100);
    expect(rows.every((row) => row[columns.indexOf('basis')] === 'estimated')).toBe(true);
    const json = await command('assess', '--pack', pack, '--at', '31.02,-42.01,40', '--json');
    const { types, winters, history } = JSON.parse(json.out) as Assessment;
    const complete = new Set(history.filter((own) => own.complete).map(({ winter }) => String(winter)));
    for (const { levels } of types)
      for (const { hours, threshold_c, penalties_c, nights_per_winter } of levels) {
        const penalties = Object.values(penalties_c).reduce((sum, own) => sum + own, 0);
        const limit = Math.round(100 * (threshold_c + penalties));
        const level = columns.indexOf(`s${hours}_c`);
        const hits = rows.filter(
          (row) => complete.has(row[1]) && Math.round(100 * Number(row[level])) <= limit,
        );
        expect(nights_per_winter).toBeCloseTo(hits.length / winters.used, 9);
      }
  });

  it('prints nights as CSV with the columns of the design, levels never falling with hours', async () => {
    const { code, out } = await command('records', 'nights', pack, '--station', 'ZZTEST2');
    expect(code).toBe(0);
    const [header, ...rows] = out.trim().split('\n');
    expect(header).toBe(
      'date,winter,kind,basis,tmin_c,tmax_before_c,tmax_after_c,s0_c,s1_c,s2_c,s3_c,s4_c,s5_c,s6_c,s8_c,s10_c,s12_c,s18_c,s24_c',
    );
    expect(rows.length).toBeGreaterThan(1000);
    for (const row of rows) {
      const cells = row.split(',');
      expect(cells).toHaveLength(19);
      const levels = cells.slice(7).map(Number);
      for (let j = 1; j < levels.length; j++) expect(levels[j], row).toBeGreaterThanOrEqual(levels[j - 1]);
      expect(Number(cells[4])).toBe(levels[0]);
      expect(levels[0]).toBeLessThanOrEqual(10);
    }
    const dates = rows.map((row) => row.slice(0, 10));
    expect(dates).toEqual([...dates].sort());
  });

  it('checks a pack and lists packs', async () => {
    const check = await commandAlone('records', 'check', pack);
    expect(check.code).toBe(0);
    expect(check.out).toContain('4 stations, winters 1991 to 2015');
    expect(check.out).toContain('every checksum as listed');
    const index = await command('records', 'index', work);
    expect(index).toMatchObject({ code: 0, out: 'pack: pack, 4 stations\n' });
  });

  it.each([
    ['an empty file', 'empty.csv', Buffer.alloc(0), /empty\.csv/],
    [
      'a truncated gzip',
      'cut.csv.gz',
      gzipSync('date,tmax,tmin\n2001-01-01,10,2\n'.repeat(500)).subarray(0, 60),
      /cut\.csv\.gz/,
    ],
    [
      'binary junk',
      'junk.csv',
      Buffer.from(Array.from({ length: 4000 }, (_, i) => (i * 7919 + 13) % 256)),
      /junk\.csv/,
    ],
    ['wrong columns', 'columns.csv', Buffer.from('colour,shape\nred,round\n'), /columns\.csv, line 1/],
    [
      'an unknown unit',
      'unit.csv',
      Buffer.from('date,tmax,tmin\n2001-01-01,50,40\n2001-01-02,51,41\n'),
      /--unit F or --unit C/,
    ],
  ])('refuses %s, and writes nothing', async (_, name, bytes, expected) => {
    const file = path.join(work, name);
    await writeFile(file, bytes);
    const target = path.join(work, `pack-${name}`);
    const outcome = await command(
      'records',
      'build',
      '--out',
      target,
      '--stations',
      path.join(work, 'raw', 'list.csv'),
      file,
    );
    expect(outcome).toMatchObject({ code: 1, out: '' });
    expect(sentence(outcome)).toMatch(expected);
    await expect(rm(target)).rejects.toThrow('ENOENT');
    await rm(file);
  });

  it.each([
    ['latitude 95', 'id,name,lat,lon,elevation_m\nZZTEST1,A,95,10,3\n', /list\.csv, line 2.*95/],
    [
      'one station in two places',
      'id,name,lat,lon,elevation_m\nZZTEST1,A,31,-42,3\nZZTEST1,A,32,-42,3\n',
      /ZZTEST1/,
    ],
  ])('refuses a station list with %s', async (_, text, expected) => {
    const list = path.join(work, 'list.csv');
    await writeFile(list, text);
    const outcome = await command(
      'records',
      'build',
      '--out',
      path.join(work, 'p'),
      '--unit',
      'C',
      '--stations',
      list,
      path.join(work, 'raw', 'ZZTEST1.csv'),
    );
    expect(outcome).toMatchObject({ code: 1, out: '' });
    expect(sentence(outcome)).toMatch(expected);
  });

  it.each([
    [
      'a projected one',
      'ncols 2\nnrows 2\nxllcorner 443000\nyllcorner 4060000\ncellsize 90\n1 2\n3 4\n',
      /degrees/,
    ],
    [
      'a cut one',
      'ncols 300\nnrows 300\nxllcorner -43.5\nyllcorner 30\ncellsize 0.01\n1 2 3\n',
      /is it cut off\?/,
    ],
    ['a picture', '\x89PNG', /neither an Esri ASCII grid, which begins with "ncols", nor a GeoTIFF/],
    ['none', null, /high\.asc does not exist/],
  ])('refuses an elevation file: %s', async (_, text, expected) => {
    const elevation = path.join(work, 'high.asc');
    if (text !== null) await writeFile(elevation, text);
    const list = path.join(work, 'raw', 'list.csv');
    const target = path.join(work, 'high');
    const options = ['--unit', 'C', '--stations', list, '--elevation', elevation];
    const file = path.join(work, 'raw', 'ZZTEST1.csv');
    const outcome = await command('records', 'build', '--out', target, ...options, file);
    expect(outcome).toMatchObject({ code: 1, out: '' });
    expect(sentence(outcome)).toMatch(expected);
    await expect(rm(target)).rejects.toThrow('ENOENT');
    await rm(elevation, { force: true });
  });

  it('names files that do not exist, and wrong use', async () => {
    const missing = await commandAlone(
      'records',
      'build',
      '--out',
      path.join(work, 'p'),
      path.join(work, 'none.csv'),
    );
    expect(missing.code).toBe(1);
    expect(sentence(missing)).toMatch(/none\.csv does not exist/);
    expect((await command('records', 'bake')).code).toBe(2);
    const use = await commandAlone('records', 'build', '--out', 'x');
    expect(use.code).toBe(2);
    expect(await command('records', 'build', '--out', 'x')).toEqual(use);
  });
});
