import { describe, expect, it } from 'vitest';
import { distancesInUnit } from '../../../web/format/distances-in-unit.ts';

describe('a sentence with distances and heights', () => {
  it('stays as it is beside °C', () => {
    expect(distancesInUnit('Tern Bay, 6.6 km away, at 120 m', 'C')).toBe('Tern Bay, 6.6 km away, at 120 m');
  });

  // 1 mi = 1.609344 km, 1 ft = 0.3048 m (exact by definition).
  it('is told in miles and feet beside °F', () => {
    expect(distancesInUnit('Tern Bay, 6.6 km away; the next at 198 km, estimated for 120 m.', 'F')).toBe(
      'Tern Bay, 4.1\u00a0mi away; the next at 123\u00a0mi, estimated for 394\u00a0ft.',
    );
  });

  it('with the decimal sign of another language, and nothing else changed', () => {
    expect(distancesInUnit('a 1,5 km; 3 millas, 12 muros', 'F')).toBe('a 0.9\u00a0mi; 3 millas, 12 muros');
  });
});
