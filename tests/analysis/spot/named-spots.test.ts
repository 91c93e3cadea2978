import { describe, expect, it } from 'vitest';
import { findNamedSpot, NAMED_SPOTS } from '../../../analysis/spot/named-spots.ts';
import { sourceOf } from '../../../analysis/tree/sources.ts';
import { celsiusDifferenceToFahrenheit } from '../../../analysis/units/temperature.ts';

const endsF = (id: string, kind: 'calm' | 'windy') => {
  const { lowC, highC } = findNamedSpot(id)!.gain[kind];
  return [lowC, highC].map((c) => Number(celsiusDifferenceToFahrenheit(c).toFixed(9)));
};

describe('named spots', () => {
  // Handbook, microsites, section 1: ends of each row, °F.
  it.each([
    ['open', [0, 0], [0, 0]],
    ['low-spot', [-8, -3], [0, 0]],
    ['mid-slope', [2, 5], [-1, 0]],
    ['crest', [1, 4], [-2, -1]],
    ['south-wall-heated', [3, 6], [1, 2]],
    ['heated-wall', [2, 4], [1, 2]],
    ['out-of-wind', [1, 2], [1, 3]],
    ['under-canopy', [2, 5], [0, 1]],
    ['paving-edge', [1, 3], [0, 1]],
    ['mulch-grass', [-2, -1], [0, 0]],
    ['lake-shore', [2, 5], [2, 4]],
    ['pond', [0, 1], [0, 0]],
    // 2 to 3.6 °F above tall sod, of which mown sod has 1.8 (S25, table of covers).
    ['bare-ground', [0.2, 1.8], [0, 0]],
  ])('gives %s its row', (id, calmF, windyF) => {
    expect(endsF(id, 'calm')).toEqual(calmF);
    expect(endsF(id, 'windy')).toEqual(windyF);
  });

  it('has plain ids, ordered ranges, known sources, the open spot first and no town or sea shore', () => {
    const ids = NAMED_SPOTS.map(({ id }) => id);
    expect(ids[0]).toBe('open');
    expect(new Set(ids).size).toBe(13);
    for (const { id, name, about, gain, sources } of NAMED_SPOTS) {
      expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/);
      expect(name).not.toMatch(/town|suburb|sea\b|south|north/i);
      expect(about).toMatch(/\.$/);
      for (const key of sources) expect(sourceOf(key), key).not.toBe(key);
      for (const { lowC, centreC, highC } of [gain.calm, gain.windy]) {
        expect(lowC).toBeLessThanOrEqual(centreC);
        expect(centreC).toBeLessThanOrEqual(highC);
        expect(centreC).toBeCloseTo((lowC + highC) / 2, 12);
      }
    }
    expect(findNamedSpot('attic')).toBeUndefined();
  });
});
