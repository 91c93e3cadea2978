import { createHash } from 'node:crypto';
import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { MISSING_TENTHS } from '../../../data-scripts/demo/daily-readings.ts';
import type { Planted } from '../../../data-scripts/demo/planted.ts';
import {
  stationRecords,
  type DemoSpan,
  type StationRecord,
} from '../../../data-scripts/demo/station-records.ts';
import { STATIONS } from '../../../data-scripts/demo/stations.ts';
import { writeDemoSources } from '../../../data-scripts/demo/write-demo-sources.ts';
import { formatIsoDay, parseIsoDay } from '../../../analysis/units/calendar.ts';

const SPAN: DemoSpan = { seed: 143, firstWinter: 2019, lastWinter: 2025 };
/** Enough to see whether two are the same. */
const SHORT: DemoSpan = { ...SPAN, firstWinter: 2024 };
const folders: string[] = [];
const records = new Map<string, StationRecord>();
let planted: Planted[] = [];

const newFolder = async () => {
  const folder = await mkdtemp(join(tmpdir(), 'invented-coast-'));
  folders.push(folder);
  return folder;
};
const text = (path: string) => readFile(join(folders[0], path), 'utf8');
const ofKind = (kind: Planted['kind']) => planted.filter((entry) => entry.kind === kind);

beforeAll(async () => {
  await writeDemoSources(await newFolder(), SPAN);
  for (const record of stationRecords(SPAN)) records.set(record.station.id, record);
  planted = (JSON.parse(await text('planted.json')) as { planted: Planted[] }).planted;
}, 120_000);

afterAll(async () => {
  for (const folder of folders) await rm(folder, { recursive: true, force: true });
});

async function digests(folder: string): Promise<Record<string, string>> {
  const found: Record<string, string> = {};
  for (const name of (await readdir(folder, { recursive: true })).sort()) {
    const bytes = await readFile(join(folder, name)).catch(() => null);
    if (bytes) found[name] = createHash('sha256').update(bytes).digest('hex');
  }
  return found;
}

describe('the same seed', () => {
  it('writes the same bytes, and another seed writes other weather on the same land', async () => {
    const written = [await newFolder(), await newFolder(), await newFolder()];
    for (const [i, seed] of [SPAN.seed, SPAN.seed, 144].entries())
      await writeDemoSources(written[i], { ...SHORT, seed });
    const [first, again, differing] = await Promise.all(written.map(digests));
    expect(Object.keys(first).length).toBeGreaterThan(45);
    expect(again).toEqual(first);
    expect(differing['land.json']).toBe(first['land.json']);
    expect(differing['daily/ZZC00000208.dly']).not.toBe(first['daily/ZZC00000208.dly']);
  });
});

describe('what is written', () => {
  it('says invented in every file that has room for a word', async () => {
    for (const name of ['sources.json', 'places.json', 'planted.json', 'land.json'])
      expect(await text(name)).toContain('invented');
    expect(JSON.parse(await text('sources.json'))).toMatchObject({
      title: expect.stringContaining('invented'),
      invented: true,
    });
  });

  it('lists each station with its place and height', async () => {
    const rows = (await text('stations.csv')).trim().split('\n');
    expect(rows[0]).toBe('id,name,lat,lon,elevation_m');
    expect(rows.length).toBe(records.size + 1);
    expect(rows).toContain(
      'ZZC00000202,Sallowmere Botanic Garden,31.095,-42.085,' + records.get('ZZC00000202')!.site.elevationM,
    );
  });

  it('writes .dly months that read back to the same tenths and flags', async () => {
    const { daily } = records.get('ZZC00000202')!;
    let known = 0;
    for (const line of (await text('daily/ZZC00000202.dly')).replace(/\n$/, '').split('\n')) {
      expect(line.length).toBe(269);
      expect(line.slice(0, 11)).toBe('ZZC00000202');
      const values = line.slice(17, 21) === 'TMIN' ? daily.tminTenths : daily.tmaxTenths;
      const flags = line.slice(17, 21) === 'TMIN' ? daily.tminFlag : daily.tmaxFlag;
      for (let day = 1; day <= 31; day++) {
        const at = 21 + 8 * (day - 1);
        const value = Number(line.slice(at, at + 5));
        if (value === -9999) continue;
        const i =
          parseIsoDay(`${line.slice(11, 15)}-${line.slice(15, 17)}-${String(day).padStart(2, '0')}`)! -
          daily.firstDay;
        expect(value).toBe(values[i]);
        expect(line.charCodeAt(at + 6)).toBe(flags[i] || 32);
        known++;
      }
    }
    const stored = [daily.tminTenths, daily.tmaxTenths]
      .flatMap((values) => [...values])
      .filter((value) => value !== MISSING_TENTHS);
    expect(known).toBe(stored.length);
  });

  it('stores whole °F as tenths of °C at volunteers, and any tenth at farms', () => {
    const fahrenheit = (id: string) =>
      [...records.get(id)!.daily.tminTenths]
        .filter((value) => value !== MISSING_TENTHS)
        .map((value) => value * 0.18 + 32);
    const offWhole = (values: number[]) =>
      Math.max(...values.map((value) => Math.abs(value - Math.round(value))));
    expect(offWhole(fahrenheit('ZZC00000208'))).toBeLessThan(0.1);
    expect(offWhole(fahrenheit('ZZA00000304'))).toBeGreaterThan(0.4);
  });

  it('writes the long and wide CSV with the reading hour, and the order CSV in whole °F', async () => {
    const long = (await text('daily/ZZC00000206.csv')).split('\n');
    expect(long[0]).toBe('ID,DATE,ELEMENT,DATA_VALUE,M_FLAG,Q_FLAG,S_FLAG,OBS_TIME');
    expect(long[1]).toMatch(/^ZZC00000206,\d{8},TMAX,-?\d+,,[SIGX]?,0,0700$/);
    const wide = (await text('daily/ZZA00000301.access.csv')).split('\n');
    expect(wide[1]).toMatch(
      /^"ZZA00000301","\d{4}-\d\d-\d\d","31.205","-42.555","\d+","Plain Orchards",".{5}",",[SIGX]?,0,2400",".{5}",",[SIGX]?,0,2400"$/,
    );
    const order = (await text('daily/ZZC00000207.order.csv')).split('\n');
    const { daily } = records.get('ZZC00000207')!;
    const [, date, tmax, tmin] = /"Cockle Quay","([-\d]+)","(-?\d+)","(-?\d+)"/.exec(order[20])!;
    const i = parseIsoDay(date)! - daily.firstDay;
    expect(Math.round(((Number(tmin) - 32) / 1.8) * 10)).toBe(daily.tminTenths[i]);
    expect(Math.round(((Number(tmax) - 32) / 1.8) * 10)).toBe(daily.tmaxTenths[i]);
  });

  it('writes hourly readings of the same curve as the daily extremes', async () => {
    const record = records.get('ZZW00000103')!;
    const rows = (await text('hourly/ZZW00000103.isd-lite.txt')).trimEnd().split('\n');
    const lowest = new Map<string, number>();
    for (const row of rows) {
      const utc = Date.UTC(
        Number(row.slice(0, 4)),
        Number(row.slice(5, 7)) - 1,
        Number(row.slice(8, 11)),
        Number(row.slice(11, 13)),
      );
      const local = new Date(utc - 3 * 3_600_000).toISOString().slice(0, 10);
      // An observer resets at midnight, so the reading of 0 h belongs to the day that ends and to the one that begins.
      const days =
        (utc / 3_600_000 - 3) % 24 === 0 ? [local, formatIsoDay(parseIsoDay(local)! - 1)] : [local];
      for (const day of days)
        lowest.set(day, Math.min(lowest.get(day) ?? Infinity, Number(row.slice(13, 19))));
    }
    const { daily } = record;
    const gaps = [...daily.tminTenths].map((value, i) => {
      const hourly = lowest.get(formatIsoDay(daily.firstDay + i));
      return value === MISSING_TENTHS || hourly === undefined ? 0 : hourly - value;
    });
    expect(gaps.filter((gap) => gap === 0).length / gaps.length).toBeGreaterThan(0.97);
    const lcd = (await text('hourly/ZZW00000101.lcd.csv')).split('\n');
    expect(lcd[1]).toMatch(/^ZZW00000101,2018-07-01T0\d:53:00,FM-15,7,-?\d+,\d+$/);
  });
});

describe('what is planted', () => {
  it('has the flags of the files and no others', () => {
    const flags = [...records.values()].flatMap(({ station, daily }) =>
      (['tmin', 'tmax'] as const).flatMap((element) =>
        [...(element === 'tmin' ? daily.tminFlag : daily.tmaxFlag)].flatMap((flag, i) =>
          flag
            ? [`${station.id} ${element} ${formatIsoDay(daily.firstDay + i)} ${String.fromCharCode(flag)}`]
            : [],
        ),
      ),
    );
    const listed = ofKind('flagged value').map(
      (entry) => `${entry.station} ${entry.element} ${entry.from} ${entry.flag}`,
    );
    expect(flags.length).toBeGreaterThan(20);
    expect(new Set(listed)).toEqual(new Set(flags));
  });

  it('has its gaps empty in the records', () => {
    for (const entry of [...ofKind('gap'), ...ofKind('gap across the great freeze')]) {
      const { daily } = records.get(entry.station)!;
      for (let day = parseIsoDay(entry.from)!; day <= parseIsoDay(entry.to)!; day++) {
        expect(daily.tminTenths[day - daily.firstDay]).toBe(MISSING_TENTHS);
      }
    }
    const freeze = ofKind('gap across the great freeze');
    expect(freeze.map((entry) => entry.station)).toEqual(['ZZC00000209']);
    for (const extreme of ofKind('good extreme')) {
      expect(extreme.from > freeze[0].from && extreme.from < freeze[0].to).toBe(true);
    }
  });

  it('stores what the manifest says, which differs from the truth', () => {
    const changed = planted.filter((entry) => entry.true_c !== undefined && entry.kind !== 'good extreme');
    expect(new Set(changed.map((entry) => `${entry.station} ${entry.element} ${entry.from}`)).size).toBe(
      changed.length,
    );
    for (const kind of ['spike', 'stuck values', 'zero for missing', 'maximum below minimum'] as const) {
      expect(
        changed.some((entry) => entry.kind === kind),
        kind,
      ).toBe(true);
    }
    for (const entry of changed) {
      const { daily } = records.get(entry.station)!;
      const values = entry.element === 'tmin' ? daily.tminTenths : daily.tmaxTenths;
      expect(values[parseIsoDay(entry.from)! - daily.firstDay] / 10).toBe(entry.stored_c);
      if (entry.kind !== 'stuck values') expect(entry.stored_c).not.toBe(entry.true_c);
    }
  });

  it('books the maximum of two morning readers a day late, and cold nights twice', () => {
    expect(ofKind('morning reading').map((entry) => [entry.station, entry.note])).toEqual([
      ['ZZC00000205', 'read at 7 h; the file does not tell the hour'],
      ['ZZC00000206', 'read at 7 h; the file tells the hour'],
    ]);
    const { daily, hours } = records.get('ZZC00000205')!;
    let late = 0;
    let compared = 0;
    for (let i = 1; i < daily.tmaxTenths.length; i++) {
      if (daily.tmaxTenths[i] === MISSING_TENTHS || daily.tmaxFlag[i]) continue;
      const afternoonBefore = Math.max(...hours.tempC.subarray(i * 24 - 14, i * 24 - 6));
      compared++;
      if (Math.abs(daily.tmaxTenths[i] / 10 - afternoonBefore) < 0.4) late++;
    }
    expect(late / compared).toBeGreaterThan(0.85);
    expect(ofKind('night booked twice').length).toBeGreaterThan(10);
  });

  it('has a short record, and rows out of order in the order CSV', async () => {
    expect(
      STATIONS.filter((one) => one.from === '2022-07-01' && one.to === '2025-06-30').map((one) => one.name),
    ).toEqual(['Hook Spit']);
    const dates = (await text('daily/ZZC00000207.order.csv')).match(/\d{4}-\d\d-\d\d/g)!;
    const [[swapped], [twice]] = [ofKind('rows out of order'), ofKind('row twice')];
    expect(dates.indexOf(swapped.to)).toBeLessThan(dates.indexOf(swapped.from));
    expect(dates.filter((date) => date === twice.from).length).toBe(2);
  });
});

describe('a station that moved', () => {
  it('reads the former place before the move and the present one after it', () => {
    const span = { seed: 143, firstWinter: 1986, lastWinter: 1988 };
    const record = [...stationRecords(span)].find(({ station }) => station.id === 'ZZC00000204')!;
    const { daily, hours } = record;
    const movedOn = parseIsoDay('1987-05-01')! - daily.firstDay;
    const off = [...daily.tminTenths].map((value, i) =>
      value === MISSING_TENTHS || daily.tminFlag[i]
        ? 0
        : Math.abs(value / 10 - Math.min(...hours.tempC.subarray(i * 24, i * 24 + 25))),
    );
    expect(Math.max(...off.slice(movedOn))).toBeLessThan(0.4);
    expect(off.slice(0, movedOn).filter((value) => value > 0.4).length).toBeGreaterThan(150);
    expect(record.planted.find((entry) => entry.kind === 'station moved')?.from).toBe('1987-05-01');
  });
});
