import { describe, expect, it } from 'vitest';
import { coverNotes, countingIds, refusals } from '../../../analysis/cover/refusals.ts';
import { InputError } from '../../../analysis/records/input-error.ts';

describe('refusals', () => {
  it.each([
    [['plastic-on-leaves', 'cloth-heavy'], /plastic on the leaves/],
    [['lights', 'lights-confirmed', 'sheet'], /burns/],
    [['lights'], /once confirmed.*ground-fault/],
    [['led-lights'], /no useful heat/],
    [['mulch-left', 'watered-soil'], /Rake the mulch back/],
    [['mulch-left', 'bare-soil'], /Rake the mulch back/],
    [['sprinkler-low', 'lights', 'lights-confirmed'], /water and electricity/],
    [['wrap-sprinkler', 'lights', 'lights-confirmed'], /water and electricity/],
    [['open-flame', 'garage'], /carbon monoxide/],
    [['overhead-sprinkler'], /breaks limbs/],
    [['short-cover', 'cloth-light'], /down to the ground/],
  ])('%j', (ids, reason) => {
    const said = refusals(ids);
    expect(said).toHaveLength(1);
    expect(said[0]).toMatch(reason);
  });

  it.each([
    [[]],
    [['cloth-heavy', 'sheet']],
    [['cloth-heavy', 'lights', 'lights-confirmed', 'tied', 'watered-soil']],
    [['mulch-left']],
    [['garage', 'cloth-light']],
    [['soil-bank', 'trunk-wrap', 'sprinkler-low']],
  ])('%j is allowed', (ids) => {
    expect(refusals(ids)).toEqual([]);
  });

  it('says the dangerous first', () => {
    expect(refusals(['led-lights', 'mulch-left', 'watered-soil', 'open-flame'])[0]).toMatch(
      /carbon monoxide/,
    );
  });

  it('keeps a garage for pots where the tree is known', () => {
    expect(refusals(['garage'], { container: false })).toHaveLength(1);
    expect(refusals(['garage'], { container: true })).toEqual([]);
  });

  it('names an unknown id', () => {
    expect(() => refusals(['foil'])).toThrow(InputError);
    expect(() => coverNotes(['foil'])).toThrow(/"foil"/);
  });

  it('leaves out what a refusal makes worthless', () => {
    expect(countingIds(['lights', 'cloth-heavy'])).toEqual(['cloth-heavy']);
    expect(countingIds(['mulch-left', 'watered-soil', 'tied', 'cloth-light'])).toEqual([
      'mulch-left',
      'tied',
      'cloth-light',
    ]);
    expect(countingIds(['plastic-on-leaves', 'plastic-house', 'soil-bank'])).toEqual([
      'plastic-on-leaves',
      'soil-bank',
    ]);
  });
});

describe('notes', () => {
  it('tells that the largest of two covers counts, that a garage counts alone, that mulch cools', () => {
    expect(coverNotes(['cloth-heavy', 'sheet', 'tied'])[0]).toMatch(/only the largest counts/);
    expect(coverNotes(['garage', 'cloth-heavy', 'tied'])).toHaveLength(1);
    expect(coverNotes(['mulch-left'])[0]).toMatch(/0\.9 to 2\.2/);
    expect(coverNotes(['cloth-heavy'])[0]).toMatch(/Not tied/);
    expect(coverNotes([])).toEqual([]);
  });
});
