import { expect, it } from 'vitest';
import { loadPostcodes, loadText } from '../../../../web/views/desk/batch/load-batch.ts';

const code = (text: string) => ({ code: text, name: 'Harbour', lat: 31, lon: -42 });
const pack = (codes: number) => ({
  url: 'http://localhost/packs/invented/',
  places: { postcodes: Array.from({ length: codes }, (_, at) => code(`SC ${100 + at}`)), towns: [] },
});

it('lists rows that make no sense and postcodes that are unknown together, by line', () => {
  const text = 'postcode,elevation_m,phone\nSC 900,1,\nSC 101,high,\nSC 100,1,\nSC 901,,\nSC 102,99999,\n';
  const { rows, bad, ignored, packUrl } = loadText(text, 'customers.csv', pack(5));
  expect(rows.map(({ line, postcode }) => [line, postcode])).toEqual([[4, 'SC 100']]);
  expect(bad.map(({ line }) => line)).toEqual([2, 3, 5, 6]);
  expect([ignored, packUrl]).toEqual([['phone'], pack(5).url]);
});

it('takes all postcodes of a pack, if they are no more than are answered at once', () => {
  expect(loadPostcodes(pack(5)).rows).toHaveLength(5);
  expect(loadPostcodes(pack(20_000)).rows).toHaveLength(20_000);
  expect(() => loadPostcodes(pack(20_001))).toThrow(/has 20,001 postcodes; at most 20,000/);
});
