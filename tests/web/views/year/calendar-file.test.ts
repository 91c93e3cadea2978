import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import type { CalendarTask } from '../../../../analysis/answer/year.ts';
import {
  CALENDAR_CAUTION,
  calendarFile,
  type CalendarFile,
} from '../../../../web/views/year/calendar-file.ts';
import { foldByOctets, LINE_OCTETS } from '../../../../web/views/year/fold-lines.ts';
import { madeTask } from './made-year.ts';

const FILE: CalendarFile = {
  tasks: [
    madeTask(),
    madeTask({ id: 'harvest', title: 'Pick', from: '11-01', to: '03-31', basis: 'found', sources: ['S08'] }),
    madeTask({
      id: 'prune',
      title: 'Prune',
      from: '03-24',
      to: '06-30',
      basis: 'practice',
      sources: ['practice'],
    }),
  ],
  typeId: 'satsuma_owari',
  typeName: 'Satsuma mandarin, Owari type',
  placeLabel: 'Sallowmere',
  startYear: 2027,
  madeAtMs: Date.UTC(2026, 10, 25, 21, 4, 5),
  estimated: false,
  inventedRegion: null,
};

/** Lines as they stand in the file; every one must end with CRLF. */
function linesOf(text: string): string[] {
  expect(text.endsWith('\r\n')).toBe(true);
  expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  return text.slice(0, -2).split('\r\n');
}

/** Events read back by a parser in strict mode, which throws on what the standard forbids. */
function eventsOf(text: string): ICAL.Event[] {
  expect(ICAL.design.strict).toBe(true);
  const calendar = new ICAL.Component(ICAL.parse(text));
  expect(calendar.name).toBe('vcalendar');
  expect(calendar.getFirstPropertyValue('version')).toBe('2.0');
  expect(calendar.getFirstPropertyValue('prodid')).toMatch(/^-\/\/.+\/\/EN$/);
  return calendar.getAllSubcomponents('vevent').map((event) => new ICAL.Event(event));
}
const datesOf = (event: ICAL.Event): [string, string] => [
  event.startDate.toString(),
  event.endDate.toString(),
];
const fileOf = (task: Partial<CalendarTask>, part: Partial<CalendarFile> = {}): string =>
  calendarFile({ ...FILE, tasks: [madeTask(task)], ...part });

describe('calendar file', () => {
  it('opens in a strict parser: all-day events, repeated yearly, with stamp and ids of their own', () => {
    const events = eventsOf(calendarFile(FILE));
    expect(events).toHaveLength(3);
    expect(new Set(events.map(({ uid }) => uid)).size).toBe(3);
    for (const { component, startDate, endDate } of events) {
      expect([startDate.isDate, endDate.isDate]).toEqual([true, true]);
      expect(component.getFirstPropertyValue('rrule')!.toString()).toBe('FREQ=YEARLY');
      expect(component.getFirstPropertyValue('dtstamp')!.toString()).toBe('2026-11-25T21:04:05Z');
      for (const name of ['location', 'geo', 'organizer', 'attendee'])
        expect(component.getFirstPropertyValue(name)).toBeNull();
    }
  });

  it('gives the days themselves, the end one day after the last, over the new year too', () => {
    expect(eventsOf(calendarFile(FILE)).map(datesOf)).toEqual([
      ['2027-11-27', '2027-11-28'],
      ['2027-11-01', '2028-04-01'],
      ['2027-03-24', '2027-07-01'],
    ]);
  });

  it('comes again on the same date each year', () => {
    const [, picking] = eventsOf(calendarFile(FILE));
    const iterator = picking.iterator();
    const years = [iterator.next(), iterator.next(), iterator.next()].map((time) => time!.toString());
    expect(years).toEqual(['2027-11-01', '2028-11-01', '2029-11-01']);
  });

  it('moves a 29 February that the year lacks to the cautious side, and keeps it in a leap year', () => {
    const startOf = (task: Partial<CalendarTask>, startYear: number): string =>
      datesOf(eventsOf(fileOf(task, { startYear }))[0])[0];
    expect(startOf({ id: 'covers-ready', from: '02-29' }, 2027)).toBe('2027-02-28');
    expect(startOf({ id: 'prune', from: '02-29' }, 2027)).toBe('2027-03-01');
    expect(startOf({ id: 'prune', from: '02-29' }, 2028)).toBe('2028-02-29');
    expect(datesOf(eventsOf(fileOf({ from: '01-10', to: '02-29' }))[0])).toEqual([
      '2027-01-10',
      '2027-03-01',
    ]);
    expect(datesOf(eventsOf(fileOf({ from: '02-29', to: '02-29', id: 'plant' }))[0])).toEqual([
      '2027-03-01',
      '2027-03-02',
    ]);
  });

  it('tells why, whose word the dates are, and that a forecast goes first', () => {
    const [covers, picking, pruning] = eventsOf(calendarFile(FILE));
    expect(covers.summary).toBe('Have the covers ready (Satsuma mandarin, Owari type)');
    expect(covers.description).toContain('In 1 winter of 10 the first such night has come by this date.');
    expect(covers.description).toContain('from this place’s record');
    expect(picking.description).toContain('Sources: UF/IFAS');
    expect(pruning.description).toContain('common practice, no source');
    for (const { description } of [covers, picking, pruning])
      expect(description.endsWith(CALENDAR_CAUTION)).toBe(true);
    expect(covers.description).not.toMatch(/estimated|invented/);
  });

  it('tells what goes on from a day from what is to be done by it', () => {
    expect(eventsOf(fileOf({ id: 'plant', title: 'Plant', to: null }))[0].summary).toMatch(
      /^Plant, from now on \(/,
    );
    expect(eventsOf(fileOf({ id: 'plant', title: 'Plant', to: '12-03' }))[0].summary).toMatch(/^Plant \(/);
  });

  it('says when the winters are estimated and when the region is invented', () => {
    const text = fileOf({}, { estimated: true, inventedRegion: 'Sallowmere Coast' });
    const [{ description }] = eventsOf(text);
    expect(description).toContain('estimated from stations around');
    expect(description).toContain('Sallowmere Coast is an invented region');
  });

  it('carries commas, semicolons, degrees, accents and pictures through, in lines of at most 75 octets', () => {
    const placeLabel = 'Orégano; Señal, 31° N \\ 🍊👩‍🌾';
    const why = `${'At or below −2,2 °C; in 1 winter of 10, “früh” 🍋. '.repeat(6)}`.trim();
    const text = fileOf({ why, title: 'Cover; now, at −2 °C 🍊' }, { placeLabel });
    const [event] = eventsOf(text);
    expect(event.summary).toBe('Cover; now, at −2 °C 🍊 (Satsuma mandarin, Owari type)');
    expect(event.description).toContain(why);
    expect(event.description).toContain(placeLabel);
    const calendar = new ICAL.Component(ICAL.parse(text));
    // The parser takes a name of the trade's own as it stands; the standard has it escaped like any text.
    const name = String(calendar.getFirstPropertyValue('x-wr-calname'));
    expect(name.replace(/\\([\\;,])/g, '$1')).toContain(placeLabel);
    for (const line of linesOf(text)) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(LINE_OCTETS);
  });

  it('reads back whatever a place is called', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 120 }), (placeLabel) => {
        const text = fileOf({}, { placeLabel });
        const [{ description }] = eventsOf(text);
        const shown = placeLabel
          .replace(/\p{Cc}+/gu, ' ')
          .replace(/ {2,}/g, ' ')
          .trim();
        expect(description).toContain(`at ${shown}. Dates:`);
        for (const line of linesOf(text)) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(LINE_OCTETS);
      }),
      { numRuns: 200 },
    );
  });

  it('keeps its ids from export to export, and apart from place to place and type to type', () => {
    const uidOf = (part: Partial<CalendarFile>): string => eventsOf(fileOf({}, part))[0].uid;
    expect(uidOf({ startYear: 2031, madeAtMs: 0 })).toBe(uidOf({}));
    expect(uidOf({ placeLabel: 'Tern Bay' })).not.toBe(uidOf({}));
    expect(uidOf({ typeId: 'lisbon_lemon' })).not.toBe(uidOf({}));
    const twice = eventsOf(calendarFile({ ...FILE, tasks: [madeTask(), madeTask()] }));
    expect(twice[0].uid).not.toBe(twice[1].uid);
  });

  it('is made without looking at a clock: the same question, the same file', () => {
    expect(calendarFile(FILE)).toBe(calendarFile(FILE));
  });
});

describe('folding by octets', () => {
  it('leaves what fits, and unfolds to what it was', () => {
    expect(foldByOctets('SUMMARY:short\r\n')).toBe('SUMMARY:short\r\n');
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 400 }), (text) => {
        const line = `X:${text.replace(/\p{Cc}/gu, '')}`;
        const folded = foldByOctets(`${line}\r\n`);
        expect(folded.replaceAll('\r\n ', '')).toBe(`${line}\r\n`);
        for (const part of folded.split('\r\n'))
          expect(Buffer.byteLength(part)).toBeLessThanOrEqual(LINE_OCTETS);
      }),
    );
  });
});
