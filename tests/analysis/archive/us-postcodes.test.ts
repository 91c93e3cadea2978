import { describe, expect, it } from 'vitest';

import { postcodesNear, readPostcodes, writePostcodes } from '../../../analysis/archive/us-postcodes.ts';
import { allUsPostcodes } from '../../../data-scripts/build/us-postcodes.ts';

const NEW_ORLEANS = { lat: 29.95, lon: -90.07 };

describe('the list of ZIP codes that the page loads', () => {
  const all = allUsPostcodes();
  const text = writePostcodes(all);

  it('says the same as the packages, to 11 m', () => {
    const read = readPostcodes(text);
    expect(read.length).toBe(all.length);
    expect(read.length).toBeGreaterThan(40_000);
    read.forEach(({ code, name, lat, lon }, i) => {
      if (code !== all[i]!.code || name !== all[i]!.name) expect.fail(`${code} ${name}`);
      if (Math.abs(lat - all[i]!.lat) > 5.1e-5 || Math.abs(lon - all[i]!.lon) > 5.1e-5) expect.fail(code);
    });
  });

  it('gives a pack the codes that `records build` would give it', () => {
    const near = postcodesNear(readPostcodes(text), [NEW_ORLEANS]);
    const built = postcodesNear(all, [NEW_ORLEANS]);
    expect(near.map(({ code }) => code)).toEqual(built.map(({ code }) => code));
    expect(near.find(({ code }) => code === '70115')).toMatchObject({ name: 'New Orleans, LA' });
  });

  it.each(['<html>', '', '70115\tNew Orleans, LA\t129\t-90', '7011\tx\t29\t-90'])(
    '%j is refused',
    (wrong) => {
      expect(() => readPostcodes(wrong)).toThrow(/The list of ZIP codes is damaged/);
    },
  );
});
