import { describe, expect, it } from 'vitest';

import { READY_YARDS } from '../../../analysis/spot/ready-yards.ts';
import { pointOfSpot, spotOfPoint } from '../../../analysis/spot/spot-text.ts';
import type { Yard } from '../../../analysis/spot/yard.ts';
import { keepBroken, keptBroken } from '../../../web/views/spot/broken-yard.ts';
import { YardDraft } from '../../../web/views/spot/yard-draft.svelte.ts';
import { memoryStorage } from '../state/memory-storage.ts';

const { yard } = READY_YARDS[0];
const CROSSED: Yard = {
  ...yard,
  things: [
    { id: 'paving-1', kind: 'paving', outline: [[2, 2], [6, 6], [6, 2], [2, 6]] }, // prettier-ignore
  ],
};

describe('the yard being drawn', () => {
  it('keeps the last good yard while the one on the plan is broken, and undo brings it back', () => {
    const draft = new YardDraft();
    draft.startWith(yard);
    expect(draft.good).toBe(yard);
    draft.change(CROSSED);
    expect(draft.problems[0].sentence).toMatch(/crosses itself/);
    expect(draft.wrongIds).toEqual(['paving-1']);
    expect(draft.good).toBe(yard);
    draft.undo();
    expect(draft.problems).toEqual([]);
    expect(draft.yard).toBe(yard);
  });

  it('a drag is one step, however long, and none when given up', () => {
    const draft = new YardDraft();
    draft.startWith(yard);
    for (let widthM = 20; widthM < 30; widthM++) draft.moving({ ...yard, widthM });
    expect(draft.busy).toBe(true);
    expect(draft.settled).toBe(yard);
    draft.change({ ...yard, widthM: 30 });
    expect([draft.busy, draft.yard?.widthM]).toEqual([false, 30]);
    draft.undo();
    expect(draft.canUndo).toBe(false);
    draft.moving({ ...yard, widthM: 25 });
    draft.moving(yard);
    expect([draft.busy, draft.canUndo]).toEqual([false, false]);
  });

  it('putting a yard away is a step like any other', () => {
    const draft = new YardDraft();
    draft.startWith(yard);
    draft.open(null);
    expect([draft.yard, draft.good]).toEqual([null, null]);
    draft.undo();
    expect(draft.yard).toBe(yard);
  });

  it('nudges and duplicates what is selected; what is gone is no longer selected', () => {
    const draft = new YardDraft();
    draft.startWith(yard);
    const [{ id }] = yard.spots;
    draft.nudge(id, 0.5, 0);
    draft.nudge(id, 0.5, 0);
    expect(draft.yard!.spots[0].at[0]).toBeCloseTo(yard.spots[0].at[0] + 1, 6);
    draft.undo();
    expect(draft.yard).toBe(yard);
    draft.duplicate(yard.things[0].id);
    expect(draft.selectedId).not.toBeNull();
    draft.undo();
    expect(draft.selectedId).toBeNull();
  });
});

describe('a broken yard over a reload', () => {
  it('comes back beside the address it belongs to, and beside no other', () => {
    const browser = memoryStorage();
    keepBroken(browser, 'good', CROSSED);
    expect(keptBroken(browser, 'good')).toEqual(CROSSED);
    expect(keptBroken(browser, 'another')).toBeNull();
    keepBroken(browser, 'good', null);
    expect(keptBroken(browser, 'good')).toBeNull();
  });

  it('is nothing where the storage is absent or holds nonsense', () => {
    const browser = memoryStorage();
    browser.setItem('citrus-winters-broken-yard', '{"goodText":"good","broken":7}');
    expect(keptBroken(browser, 'good')).toBeNull();
    browser.setItem('citrus-winters-broken-yard', '{');
    expect(keptBroken(browser, 'good')).toBeNull();
    expect(keptBroken(null, 'good')).toBeNull();
  });
});

describe('a point as a choice', () => {
  it('comes back as it was written', () => {
    expect(pointOfSpot(spotOfPoint([4.25, 12]))).toEqual([4.25, 12]);
    expect(spotOfPoint([4.25, 12])).toBe('yard:4.25,12');
    expect(pointOfSpot('south-wall-heated')).toBeNull();
    expect(pointOfSpot(null)).toBeNull();
  });
});
