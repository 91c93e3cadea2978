import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { combinations } from '../../../analysis/cover/combinations.ts';
import { ALL_CHOICES, type CoverId } from '../../../analysis/cover/cover-ids.ts';
import { findMeasure, MEASURES } from '../../../analysis/cover/measures.ts';
import { refusals } from '../../../analysis/cover/refusals.ts';
import { becauseOf } from '../../../web/views/cover/because-of.ts';
import {
  aloneWith,
  candidatesFor,
  coverIdsOf,
  coverText,
  offeredMeasures,
  unknownCovers,
  withCover,
} from '../../../web/state/cover-choice.ts';

const someIds = fc.subarray([...ALL_CHOICES], { minLength: 0 });

describe('a choice of covers', () => {
  it('comes back from its text in the order offered, each once', () => {
    fc.assert(
      fc.property(someIds, (ids) => {
        expect(coverIdsOf(coverText([...ids, ...ids]) ?? null)).toEqual(ids);
      }),
    );
    expect(coverIdsOf(' tied , cloth-heavy,,tied')).toEqual(['cloth-heavy', 'tied']);
    expect(coverText([])).toBeUndefined();
  });

  it('passes over what it does not know, and names it', () => {
    expect(coverIdsOf('heat-lamp,sheet')).toEqual(['sheet']);
    expect(unknownCovers('heat-lamp,sheet')).toEqual(['heat-lamp']);
    expect(unknownCovers(null)).toEqual([]);
  });

  it('loses a condition with the last thing that asks for it', () => {
    const cloth: CoverId[] = ['cloth-light', 'sheet', 'tied'];
    expect(withCover(cloth, 'sheet', false)).toEqual(['cloth-light', 'tied']);
    expect(withCover(['cloth-light', 'tied'], 'cloth-light', false)).toEqual([]);
    expect(withCover(['lights', 'lights-confirmed'], 'lights', false)).toEqual([]);
    expect(withCover(['watered-soil'], 'tied', true)).toEqual(['watered-soil']);
  });

  it('offers a garage for a tree in a container only, or where a link chose it', () => {
    const ids = (container: boolean, chosen: CoverId[] = []) =>
      offeredMeasures({ container, ageYears: 3 }, chosen).map(({ id }) => id);
    expect(ids(true)).toEqual(MEASURES.map(({ id }) => id));
    expect(ids(false)).not.toContain('garage');
    expect(ids(false, ['garage'])).toContain('garage');
  });

  it('offers a sprinkler in the crown for young trees only, by the years the penalties call young', () => {
    const ids = (ageYears: number, chosen: CoverId[] = []) =>
      offeredMeasures({ container: false, ageYears }, chosen).map(({ id }) => id);
    expect(ids(5)).toContain('sprinkler-raised');
    expect(ids(6)).not.toContain('sprinkler-raised');
    expect(ids(6)).toContain('sprinkler-low');
    expect(ids(6, ['sprinkler-raised'])).toContain('sprinkler-raised');
    const tried = (ageYears: number) =>
      new Set(combinations(candidatesFor({ container: false, ageYears }, [])).flatMap((one) => one.ids));
    expect(tried(5).has('sprinkler-raised')).toBe(true);
    expect(tried(6).has('sprinkler-raised')).toBe(false);
  });

  it('tells of each measure alone so that nothing in it is refused', () => {
    for (const measure of MEASURES)
      for (const ids of [[], ['tied'], ['lights-confirmed', 'lights']] as CoverId[][])
        expect(refusals(aloneWith(measure, ids), { container: true }), measure.id).toEqual([]);
    expect(aloneWith(findMeasure('cloth-heavy')!, ['sheet', 'tied'])).toEqual(['cloth-heavy', 'tied']);
    expect(aloneWith(findMeasure('soil-bank')!, ['sheet', 'tied'])).toEqual(['soil-bank']);
  });

  it('looks for the least cover without lights until they are confirmed, without a garage in the ground', () => {
    const used = (container: boolean, ids: CoverId[]) =>
      new Set(combinations(candidatesFor({ container, ageYears: 10 }, ids)).flatMap((one) => one.ids));
    expect(used(false, ['lights']).has('lights')).toBe(false);
    expect(used(false, ['lights', 'lights-confirmed']).has('lights')).toBe(true);
    expect(used(false, []).has('garage')).toBe(false);
    expect(used(true, []).has('garage')).toBe(true);
    expect(used(false, []).has('tied')).toBe(true);
  });
});

describe('a refusal', () => {
  it('stands at each choice it would be gone without, and nowhere else', () => {
    const ids: CoverId[] = ['cloth-heavy', 'sheet', 'lights', 'lights-confirmed', 'led-lights'];
    const tree = { container: false };
    expect(becauseOf('sheet', ids, tree)).toEqual(becauseOf('lights', ids, tree));
    expect(becauseOf('sheet', ids, tree).join()).toContain('it burns');
    expect(becauseOf('led-lights', ids, tree).join()).toContain('no useful heat');
    expect(becauseOf('cloth-heavy', ids, tree)).toEqual([]);
    fc.assert(
      fc.property(someIds, (chosen) => {
        const all = refusals(chosen, tree);
        for (const id of chosen)
          for (const sentence of becauseOf(id, chosen, tree)) expect(all).toContain(sentence);
        for (const id of chosen) expect(becauseOf(id, [id], tree)).toEqual(refusals([id], tree));
      }),
    );
  });
});
