import { describe, expect, it } from 'vitest';
import { keptNights } from '../../../../analysis/records/kept-nights.ts';
import { readReadings } from '../../../../analysis/spot/thermometer/read-readings.ts';
import { inventedReadings } from '../../../../web/views/spot/invented-readings.ts';
import { READINGS_KEY } from '../../../../web/views/spot/kept-readings.ts';
import { ThermometerState } from '../../../../web/views/spot/thermometer-state.svelte.ts';
import { memoryStorage } from '../../state/memory-storage.ts';

const TEXT = '2024-01-05,28\n2024-01-06,30\n2024-01-07,31';
const NIGHTS = keptNights([0, 1, 2].map((i) => [19_727 + i, 2024, i, ...Array<number>(12).fill(-100 - i)]));

describe('readings on the page', () => {
  it('outlast a reload with all that was decided about them', () => {
    const storage = memoryStorage();
    const before = new ThermometerState(storage);
    before.type(TEXT);
    before.decide({ unit: 'F', order: 'month first' });
    before.mend({ kind: 'leave-out', lines: [2] });
    before.compareWith({ name: 'Airport', awayKm: 4.2, notes: ['sorted'], nights: NIGHTS });
    const after = new ThermometerState(storage);
    expect(after.text).toBe(TEXT);
    expect(after.choices).toEqual(before.choices);
    expect(after.own).toMatchObject({ name: 'Airport', awayKm: 4.2, notes: ['sorted'] });
    expect(after.own!.nights.day).toEqual(NIGHTS.day);
    expect(after.own!.nights.kind).toEqual(NIGHTS.kind);
    expect(after.own!.nights.sustained[0]).toEqual(NIGHTS.sustained[0]);
  });

  it('stay when they make no sense, with one sentence why', () => {
    const state = new ThermometerState(memoryStorage());
    state.type('no dates here');
    expect(state.problem).toMatch(/^The text: no line has a date/);
    expect(state.text).toBe('no dates here');
    state.type(TEXT);
    expect([state.problem, state.read?.readings.length]).toEqual([null, 3]);
  });

  it('ask for the order of day and month only where dates contradict each other', () => {
    const state = new ThermometerState(memoryStorage());
    state.type('25/01/2024,28\n01/26/2024,30\n01/27/2024,31\n01/28/2024,32');
    expect([state.read, state.asksForOrder]).toEqual([null, true]);
    expect(state.problem).toMatch(/can only be day first.*only month first/);
    state.decide({ order: 'month first' });
    expect([state.problem, state.asksForOrder]).toEqual([null, false]);
    state.type('no dates here');
    expect(state.asksForOrder).toBe(false);
  });

  it('can be put back after a file or a clearing took their place, and that again', () => {
    const state = new ThermometerState(memoryStorage());
    expect(state.canPutBack).toBe(false);
    state.type(TEXT);
    state.decide({ unit: 'C' });
    state.replace('2024-02-01,1\n2024-02-02,2\n2024-02-03,3', 'log.csv');
    expect(state.choices.unit).toBeNull();
    state.putBack();
    expect([state.text, state.choices.unit]).toEqual([TEXT, 'C']);
    state.replace('');
    state.putBack();
    expect(state.text).toBe(TEXT);
  });

  it('take back one mend and leave the others', () => {
    const state = new ThermometerState(memoryStorage());
    state.type(TEXT);
    state.mend({ kind: 'unit', unit: 'F' });
    state.mend({ kind: 'shift', days: 1 });
    state.unmend(0);
    expect(state.choices.mends).toEqual([{ kind: 'shift', days: 1 }]);
  });

  it('forget the lines left out once the text is edited', () => {
    const state = new ThermometerState(memoryStorage());
    state.type(TEXT);
    state.mend({ kind: 'shift', days: 1 });
    state.mend({ kind: 'leave-out', lines: [2] });
    state.type(`${TEXT}\n2024-01-08,29`);
    expect(state.choices.mends).toEqual([{ kind: 'shift', days: 1 }]);
  });

  it('refuse a file far too large, and keep what there is', () => {
    const state = new ThermometerState(memoryStorage());
    state.type(TEXT);
    state.replace('x'.repeat(4_000_001), 'huge.csv');
    expect(state.fileProblem).toMatch(/^huge\.csv has 4 million characters; the limit/);
    expect(state.text).toBe(TEXT);
  });

  it('do without a storage, and with one that holds nonsense', () => {
    const state = new ThermometerState(null);
    state.type(TEXT);
    expect(state.read?.readings).toHaveLength(3);
    const odd = memoryStorage();
    odd.held.set(READINGS_KEY, '{"text":');
    expect(new ThermometerState(odd).text).toBe('');
  });

  it('leave nothing in the browser once cleared', () => {
    const storage = memoryStorage();
    const state = new ThermometerState(storage);
    state.type(TEXT);
    expect(storage.held.size).toBe(1);
    state.type('');
    expect(storage.held.size).toBe(0);
  });
});

describe('invented readings for an invented region', () => {
  it('are of nights of the record, the same every time, and can be read', () => {
    const text = inventedReadings(NIGHTS);
    expect(text).toBe(inventedReadings(NIGHTS));
    const read = readReadings(text, 'x');
    expect(read.unit).toBe('F');
    expect(read.readings.map(({ day }) => day)).toEqual([...NIGHTS.day]);
  });
});
