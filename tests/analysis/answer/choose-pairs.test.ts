import { describe, expect, it } from 'vitest';
import { CROP, type Offer } from '../../../analysis/answer/choose-offer.ts';
import { harvestMonths, pairsOf, type Paired } from '../../../analysis/answer/choose-pairs.ts';
import { findType } from '../../../analysis/tree/catalogue.ts';
import { harvestWindow } from '../../../analysis/tree/harvest.ts';
import { offer } from './made-offers.ts';

/** Winters as letters: `.` crop, `x` lost, `?` not known. */
function paired(id: string, winters: string, change: Partial<Offer> = {}): Paired {
  const type = findType(id)!;
  const cropsByWinter = Uint8Array.from(winters, (w) =>
    w === 'x' ? CROP.lost : w === '?' ? CROP.unknown : CROP.kept,
  );
  return { type, offer: offer({ cropsByWinter, harvest: harvestWindow(type, 'gulf', 'north'), ...change }) };
}

describe('pairs', () => {
  it('are told with what takes both, what chance alone would make of it, and the harvest', () => {
    // October to December; November to April.
    const [pair] = pairsOf(
      [paired('kumquat_nagami', 'xx........?'), paired('satsuma_owari', '.xx.......x')],
      'north',
    );
    expect(pair.typeIds).toEqual(['satsuma_owari', 'kumquat_nagami']);
    expect(pair.bothLost).toBe(0.1);
    expect(pair.ifIndependent).toBeCloseTo(0.04, 12);
    expect(pair.harvest).toBe('October to December and November to April: fruit in 7 months of the year.');
    expect(pair.rule).toBe(
      'Grown trees lost both crops in 1 of 10 winters (2 and 2 each by itself); were the losses unconnected it would be about 0.4. ' +
        'Together they bear in 7 months, the longer of them alone in 6.',
    );
  });

  it('follow one another where the months do', () => {
    const [pair] = pairsOf([paired('satsuma_owari', '..'), paired('temple_tangor', '..')], 'north');
    expect(pair.harvest).toBe('October to December, then January to March: fruit in 6 months of the year.');
    expect(pair.rule).toMatch(/^Grown trees lost neither crop in 2 winters\./);
  });

  it('are none where they ripen at once, fail together, or share no winter', () => {
    const owari = paired('satsuma_owari', 'x...');
    expect(pairsOf([owari, paired('yuzu', '....')], 'north')).toEqual([]);
    expect(pairsOf([owari, paired('temple_tangor', 'xx..')], 'north')).toEqual([]);
    expect(pairsOf([owari, paired('temple_tangor', '????')], 'north')).toEqual([]);
    expect(pairsOf([owari], 'north')).toEqual([]);
    expect(pairsOf([], 'north')).toEqual([]);
  });

  it('are none where most winters that take the one take the other', () => {
    const owari = paired('satsuma_owari', 'xxxx....');
    const count = (winters: string): number =>
      pairsOf([owari, paired('temple_tangor', winters)], 'north').length;
    // Two of three shared is as far as it goes; three of four is too far.
    expect(count('xx..x...')).toBe(1);
    expect(count('xxx.x...')).toBe(0);
  });

  it('are three at most, those losing both most rarely first, then those with more months', () => {
    const pairs = pairsOf(
      [
        paired('satsuma_owari', 'x.x...'),
        paired('temple_tangor', 'xx....'),
        paired('kumquat_nagami', '...x..'),
        paired('valencia_orange', '......'),
      ],
      'north',
    );
    expect(pairs).toHaveLength(3);
    const lost = pairs.map(({ bothLost }) => bothLost);
    expect(lost).toEqual([0, 0, 0]);
    // November to April with March to June, October to December with March to June, October to December with November to April.
    expect(pairs.map(({ typeIds }) => typeIds.join('+'))).toEqual([
      'kumquat_nagami+valencia_orange',
      'satsuma_owari+kumquat_nagami',
      'satsuma_owari+valencia_orange',
    ]);
  });

  it('stand by winters that take both before months with fruit', () => {
    const pairs = pairsOf(
      [
        paired('kumquat_nagami', 'xx....'),
        paired('valencia_orange', 'x.x...'),
        paired('satsuma_owari', '..xx..'),
      ],
      'north',
    );
    expect(pairs.map(({ typeIds }) => typeIds.join('+'))).toEqual([
      'satsuma_owari+kumquat_nagami',
      'kumquat_nagami+valencia_orange',
      'satsuma_owari+valencia_orange',
    ]);
  });

  it('know the months south of the equator and over the turn of the count', () => {
    const owari = findType('satsuma_owari')!;
    expect(harvestMonths(harvestWindow(owari, 'gulf', 'south'), 'south')).toEqual([4, 5, 6]);
    const grapefruit = findType('grapefruit')!;
    expect(harvestMonths(harvestWindow(grapefruit, 'california', 'north'), 'north')).toEqual([
      5, 6, 7, 8, 9, 10,
    ]);
    const makrut = findType('makrut_lime')!;
    expect(harvestMonths(harvestWindow(makrut, 'gulf', 'north'), 'north')).toHaveLength(12);
  });
});
