import { describe, expect, it } from 'vitest';
import { CITRUS_TYPES, findType } from '../../../analysis/tree/catalogue.ts';
import names from '../../../analysis/tree/type-names.json' with { type: 'json' };
import { typeName } from '../../../analysis/tree/type-names.ts';
import { sourceOf } from '../../../analysis/tree/sources.ts';
import { LEVELS } from '../../../analysis/tree/levels.ts';
import { celsiusToFahrenheit } from '../../../analysis/units/temperature.ts';

const centreF = (id: string, level: (typeof LEVELS)[number]) =>
  celsiusToFahrenheit(findType(id)!.thresholds[level].centreC);

describe('catalogue of types', () => {
  it('has 37 types with unique ids, ordered ranges, and a known source for every key', () => {
    expect(CITRUS_TYPES).toHaveLength(37);
    expect(new Set(CITRUS_TYPES.map((type) => type.id)).size).toBe(37);
    for (const type of CITRUS_TYPES) {
      for (const level of LEVELS) {
        const { lowC, centreC, highC, hours } = type.thresholds[level];
        expect(lowC, `${type.id} ${level}`).toBeLessThanOrEqual(centreC);
        expect(centreC, `${type.id} ${level}`).toBeLessThanOrEqual(highC);
        expect(hours).toBeGreaterThan(0);
      }
      expect(type.thresholds.leaf.centreC).toBeGreaterThanOrEqual(type.thresholds.wood.centreC);
      expect(type.thresholds.wood.centreC).toBeGreaterThan(type.thresholds.kill.centreC);
      for (const key of type.sources) expect(sourceOf(key), key).not.toBe(key);
    }
  });

  it('has a name for each of them and for no other', () => {
    expect(Object.keys(names)).toEqual(CITRUS_TYPES.map(({ id }) => id));
    expect(typeName('meyer_lemon')).toBe('Meyer lemon');
    expect(typeName('meyer-lemon')).toBeUndefined();
  });

  // S01 (UC, Butte County): serious wood damage after 4 h at 20 °F mandarin, 22 °F Meyer, 24 °F orange.
  it('holds the published four-hour wood thresholds', () => {
    expect(centreF('clementine', 'wood')).toBeCloseTo(20, 9);
    expect(centreF('meyer_lemon', 'wood')).toBeCloseTo(22, 9);
    expect(centreF('valencia_orange', 'wood')).toBeCloseTo(24, 9);
    expect(findType('valencia_orange')!.thresholds.wood.hours).toBe(4);
  });

  // Common practice, no source: ordinary fruit is safe until about 26-27 °F for four hours.
  it('puts the fruit of oranges and grapefruit within 2 °F of 26-27 °F', () => {
    for (const id of ['navel_orange', 'valencia_orange', 'hamlin_orange', 'blood_orange', 'grapefruit']) {
      const fruitF = centreF(id, 'fruit');
      expect(Math.abs(fruitF - 26.5), id).toBeLessThanOrEqual(2);
      expect(findType(id)!.thresholds.fruit.hours, id).toBeGreaterThanOrEqual(4);
    }
  });

  // Common practice, no source: harm is looked for from four to six hours on.
  it('judges major wood by four hours or more', () => {
    for (const type of CITRUS_TYPES) expect(type.thresholds.wood.hours, type.id).toBeGreaterThanOrEqual(4);
  });

  // Common practice, no source; S03 gives the same order: satsuma and kumquat hardiest, lemon and lime tenderest.
  it('lets satsumas and kumquats stand the 20s and puts lemons and limes first to go', () => {
    for (const id of ['satsuma_owari', 'satsuma_early', 'kumquat_meiwa', 'kumquat_nagami']) {
      expect(centreF(id, 'leaf'), id).toBeLessThanOrEqual(20.001);
    }
    const eating = CITRUS_TYPES.filter((type) => type.use === 'eating');
    const tenderest = [
      'citron',
      'mexican_lime',
      'tahiti_lime',
      'makrut_lime',
      'eureka_lemon',
      'lisbon_lemon',
    ];
    for (const id of tenderest) {
      for (const type of eating) {
        expect(centreF(id, 'leaf'), `${id} against ${type.id}`).toBeGreaterThanOrEqual(
          celsiusToFahrenheit(type.thresholds.leaf.centreC) - 1e-9,
        );
      }
    }
  });

  it('has no type of an unknown id', () => expect(findType('banana')).toBeUndefined());
});
