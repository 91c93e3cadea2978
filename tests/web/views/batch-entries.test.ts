import { describe, expect, it } from 'vitest';
import { BATCH_ADVICE, BATCH_LEVELS, type BatchAnswer } from '../../../analysis/answer/batch.ts';
import { BatchEntries, NO_FILTER, SORT_COLUMNS } from '../../../web/views/desk/batch/batch-entries.ts';
import { heightsMissing } from '../../../web/views/desk/batch/batch-words.ts';
import { badRowsCsv, batchPieces, fileOf } from '../../../web/views/desk/batch/export-batch.ts';
import { BATCH_COLUMNS } from '../../../analysis/answer/batch-table.ts';

const types = [
  { id: 'b', name: 'Beta, sour' },
  { id: 'a', name: 'Alpha' },
];
/** Type 0 lost once in `often` winters, type 1 ten times as seldom. */
function answer(
  often: number,
  winters: number,
  classes: readonly (typeof BATCH_ADVICE)[number][],
): BatchAnswer {
  return {
    problem: null,
    basis: 'history',
    station: '=Station',
    stationKm: 3,
    elevationM: NaN,
    errorC: 0.5,
    winters,
    first: 1950,
    last: 2010,
    periods: Float64Array.from(
      [often, 10 * often].flatMap((p) => BATCH_LEVELS.flatMap(() => [p, p / 2, p * 2])),
    ),
    bases: new Uint8Array(2 * BATCH_LEVELS.length),
    advice: Uint8Array.from(classes, (one) => BATCH_ADVICE.indexOf(one)),
  };
}
const rows = [
  { line: 2, label: 'Zeta', customer: '10', postcode: 'SC 110', place: 0 },
  { line: 3, label: 'Eta', customer: '9', postcode: 'SC 20', place: 1 },
  { line: 4, label: '=HYPERLINK("x")', customer: '', postcode: '', place: 2 },
  { line: 6, label: 'Twice', customer: '9', postcode: 'SC 20', place: 1 },
];
const answers = [
  answer(4, 60, ['not-here', 'plant-out']),
  answer(2, 30, ['not-here', 'with-plan']),
  { problem: 'no station near' },
];
const entries = new BatchEntries(rows, answers, types);
const lines = (of: Uint32Array) =>
  [...of].map((entry) => `${entries.at(entry).row.line}${types[entries.at(entry).type].id}`);
const sorted = (column: (typeof SORT_COLUMNS)[number], descending = false) =>
  lines(entries.sorted(entries.all, { column, descending })).join(' ');

describe('rows of a batch on the page', () => {
  it('are those with an answer, times the types', () => {
    expect(lines(entries.all)).toEqual(['2b', '2a', '3b', '3a', '6b', '6a']);
  });
  it('say how many have a height that nobody knows, where that matters', () => {
    expect(heightsMissing(entries)).toEqual([expect.stringMatching(/^The height of 3 rows isn’t known, /)]);
    // A station's own winters need no height; a height that is known needs no word.
    const own = { ...answer(4, 60, ['not-here', 'plant-out']), errorC: 0 };
    const known = { ...answer(4, 60, ['not-here', 'plant-out']), elevationM: 40 };
    expect(heightsMissing({ rows, answers: [own, known, { problem: 'no station near' }] })).toEqual([]);
    expect(heightsMissing({ rows, answers: [null, null, null] })).toEqual([]);
  });
  it('are sorted by any column, numbers in texts by value, equals as in the file', () => {
    expect(sorted('line', true)).toBe('6b 6a 3b 3a 2b 2a');
    expect(sorted('place')).toBe('3b 3a 6b 6a 2b 2a');
    expect(sorted('customer')).toBe('3b 3a 6b 6a 2b 2a');
    expect(sorted('type')).toBe('2a 3a 6a 2b 3b 6b');
    expect(sorted('class')).toBe('2a 3a 6a 2b 3b 6b');
    expect(sorted('kill')).toBe('3b 6b 2b 3a 6a 2a');
    expect(sorted('kill', true)).toBe('2a 3a 6a 2b 3b 6b');
    expect(sorted('winters')).toBe('3b 3a 6b 6a 2b 2a');
  });
  it('are filtered by text, type and class', () => {
    const shown = (filter: Partial<typeof NO_FILTER>) =>
      lines(entries.filtered({ ...NO_FILTER, ...filter })).join(' ');
    expect(shown({})).toBe('2b 2a 3b 3a 6b 6a');
    expect(shown({ text: ' sc 20 ' })).toBe('3b 3a 6b 6a');
    expect(shown({ text: 'ETA', typeId: 'a' })).toBe('2a 3a');
    expect(shown({ advice: 'with-plan' })).toBe('3a 6a');
    expect(shown({ advice: 'none' })).toBe('');
  });
  it('stay quick by the ten thousands', () => {
    const many = Array.from({ length: 2000 }, (_, i) => ({ ...rows[0], line: i, label: `P${i % 97}` }));
    const kinds = Array.from({ length: 37 }, (_, i) => ({ id: `t${i}`, name: `Type ${i}` }));
    const one: BatchAnswer = {
      ...(answers[0] as BatchAnswer),
      periods: Float64Array.from({ length: 37 * 9 }, (_, i) => (i * 7919) % 101),
      bases: new Uint8Array(37 * 3),
      advice: new Uint8Array(37),
    };
    const big = new BatchEntries(many, [one], kinds);
    const started = performance.now();
    const order = big.sorted(big.filtered({ ...NO_FILTER, text: 'p' }), { column: 'leaf', descending: true });
    expect(order).toHaveLength(74_000);
    expect(performance.now() - started).toBeLessThan(2000);
  });
  it('are exported as shown, with the columns of the command and nothing that runs', async () => {
    const pack = { meta: { title: 'Invented', invented: true, sources: [] } } as never;
    const places = [0, 1, 2].map((at) => ({ lat: at, lon: -at, elevationM: null }));
    const zeta = entries.filtered({ ...NO_FILTER, text: 'zeta', typeId: 'b' });
    const file = await fileOf(batchPieces(entries, zeta, places, pack, '=file.csv'), 'text/csv');
    expect(file.type).toBe('text/csv');
    const csv = await file.text();
    const table = csv.split('\r\n').filter((line) => line !== '' && !line.startsWith('#'));
    expect(table[0]).toBe(BATCH_COLUMNS.join(','));
    expect(table).toHaveLength(2);
    expect(table[1]).toBe(
      '2,10,Zeta,SC 110,0,0,,history,\'=Station,3,0.5,60,1950,2010,b,"Beta, sour",not-here,4,2,8,fitted,4,2,8,fitted,4,2,8,fitted',
    );
    // 210 ft in metres by the international foot of 0.3048 m: 64.008.
    const told = { ...answer(4, 60, ['not-here', 'plant-out']), elevationM: 210 * 0.3048 };
    const inFeet = new BatchEntries(rows.slice(0, 1), [told], types);
    const written = await fileOf(batchPieces(inFeet, inFeet.all, places, pack, ''), 'text/csv');
    expect(await written.text()).toMatch(/SC 110,0,0,64\.01,/);
    expect(badRowsCsv([{ line: 4, reason: 'unknown', text: '=HYPERLINK("x")' }])).toBe(
      'line,reason,text\r\n4,unknown,"\'=HYPERLINK(""x"")"\r\n',
    );
  });
});
