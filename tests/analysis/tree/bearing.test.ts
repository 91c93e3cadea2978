import { expect, test } from 'vitest';
import { bearingOf, YEARS_TO_BEAR_AGAIN } from '../../../analysis/tree/bearing.ts';
import { CITRUS_TYPES } from '../../../analysis/tree/catalogue.ts';

test('every type has a first crop, none said to be found in a source', () => {
  for (const type of CITRUS_TYPES) {
    const { firstCropYear, basis } = bearingOf(type);
    expect(firstCropYear).toBeGreaterThanOrEqual(2);
    expect(firstCropYear).toBeLessThanOrEqual(6);
    expect(Number.isInteger(firstCropYear)).toBe(true);
    expect(basis).not.toBe('found');
  }
});

test('kumquats bear before mandarins, mandarins before grapefruit, seedling trifoliate last', () => {
  const year = (id: string): number => bearingOf({ id }).firstCropYear;
  expect(year('kumquat_meiwa')).toBeLessThan(year('satsuma_owari'));
  expect(year('satsuma_owari')).toBeLessThan(year('grapefruit'));
  expect(year('grapefruit')).toBeLessThan(year('trifoliate_orange'));
});

test('a type without a figure is said, not guessed', () => {
  expect(() => bearingOf({ id: 'medlar' })).toThrow('"medlar"');
});

test('wood takes longer to bear again than leaf', () => {
  expect(YEARS_TO_BEAR_AGAIN.wood).toBeGreaterThan(YEARS_TO_BEAR_AGAIN.leaf);
});
