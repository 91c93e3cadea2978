import { describe, expect, it } from 'vitest';

import type { PlanPoint, Wall, Yard } from '../../../analysis/spot/yard.ts';
import { findThing } from '../../../web/yard/edit-yard.ts';
import { PlanGestures } from '../../../web/yard/plan-gestures.ts';
import { findTool } from '../../../web/yard/tools.ts';

const YARD: Yard = {
  name: 'Test yard',
  widthM: 20,
  depthM: 16,
  things: [
    {
      id: 'wall-1',
      kind: 'wall',
      line: [
        [2, 2],
        [8, 2],
      ],
      heightM: 2,
      masonry: true,
      open: false,
    },
    {
      id: 'paving-1',
      kind: 'paving',
      outline: [
        [10, 10],
        [14, 10],
        [14, 13],
        [10, 13],
      ],
    },
  ],
  spots: [{ id: 'spot-1', name: 'By the wall', at: [5, 3] }],
  slope: null,
  bigWater: null,
  coldWindFromDeg: 315,
  own: {},
};

function setUp() {
  const seen = {
    changed: [] as { yard: Yard; id: string | null }[],
    moving: [] as Yard[],
    pointed: [] as PlanPoint[],
    selected: [] as (string | null)[],
    sketched: [] as (readonly PlanPoint[])[],
  };
  const gestures = new PlanGestures({
    changed: (yard, id) => seen.changed.push({ yard, id }),
    moving: (yard) => seen.moving.push(yard),
    pointed: (at) => seen.pointed.push(at),
    selected: (id) => seen.selected.push(id),
    sketched: (corners) => seen.sketched.push(corners),
  });
  const click = (at: PlanPoint): void => {
    gestures.begin(YARD, null, at);
    gestures.end(at, 0);
  };
  return { gestures, seen, click };
}

describe('drawing', () => {
  it('a wall by dragging, snapped to the grid and square', () => {
    const { gestures, seen } = setUp();
    gestures.tool = findTool('wall');
    gestures.begin(YARD, null, [3.1, 6.2]);
    gestures.move([9, 6.4], 80);
    gestures.end([9.1, 6.3], 90);
    const { yard, id } = seen.changed[0];
    expect(id).toBe('wall-2');
    expect((findThing(yard, id) as Wall).line).toEqual([
      [3, 6],
      [9, 6],
    ]);
    expect(yard.things).toHaveLength(3);
  });

  it('an outline corner by corner, closed on its first corner', () => {
    const { gestures, seen, click } = setUp();
    gestures.tool = findTool('ground');
    for (const at of [
      [1, 8],
      [5, 8],
      [5, 12],
      [1, 8],
    ] as const)
      click(at);
    expect(findThing(seen.changed[0].yard, 'ground-1')).toMatchObject({
      outline: [
        [1, 8],
        [5, 8],
        [5, 12],
      ],
    });
    expect(gestures.sketch).toEqual([]);
  });

  it('a line of three corners ends where it is clicked twice', () => {
    const { gestures, seen, click } = setUp();
    gestures.tool = findTool('fence');
    for (const at of [
      [1, 8],
      [5, 8],
      [5, 12],
      [5, 12],
    ] as const)
      click(at);
    expect((findThing(seen.changed[0].yard, 'wall-2') as Wall).line).toEqual([
      [1, 8],
      [5, 8],
      [5, 12],
    ]);
  });

  it('makes nothing of too few corners, and gives up on Escape', () => {
    const { gestures, seen, click } = setUp();
    gestures.tool = findTool('paving');
    click([1, 8]);
    click([5, 8]);
    expect(gestures.finishSketch()).toBe(false);
    expect(gestures.cancel()).toBe(true);
    expect(seen.changed).toEqual([]);
    expect(gestures.cancel()).toBe(false);
  });

  it('stays on the plot', () => {
    const { gestures, seen } = setUp();
    gestures.tool = findTool('wall');
    gestures.begin(YARD, null, [18, 15]);
    gestures.end([40, 15.2], 300);
    expect((findThing(seen.changed[0].yard, 'wall-2') as Wall).line[1]).toEqual([20, 15]);
  });
});

describe('editing', () => {
  it('moves a thing by its first corner on the grid, and tells of it on the way', () => {
    const { gestures, seen } = setUp();
    gestures.begin(YARD, { part: 'thing', id: 'wall-1' }, [4, 2]);
    gestures.move([5.2, 4.3], 60);
    gestures.end([5.2, 4.3], 60);
    expect(seen.moving).toHaveLength(1);
    expect((findThing(seen.changed[0].yard, 'wall-1') as Wall).line).toEqual([
      [3, 4.5],
      [9, 4.5],
    ]);
    expect(seen.selected).toEqual(['wall-1']);
  });

  it('a thing pushed against the edge keeps its shape', () => {
    const { gestures, seen } = setUp();
    gestures.begin(YARD, { part: 'thing', id: 'wall-1' }, [4, 2]);
    gestures.move([-30, 2], 300);
    gestures.end([-30, 2], 300);
    expect((findThing(seen.changed[0].yard, 'wall-1') as Wall).line).toEqual([
      [0, 2],
      [6, 2],
    ]);
  });

  it('a click selects and changes nothing', () => {
    const { gestures, seen } = setUp();
    gestures.begin(YARD, { part: 'thing', id: 'paving-1' }, [11, 11]);
    gestures.move([11.05, 11], 1);
    gestures.end([11.05, 11], 1);
    expect(seen.changed).toEqual([]);
    expect(seen.selected).toEqual(['paving-1']);
  });

  it('drags a corner square to its neighbours and to corners near by', () => {
    const { gestures, seen } = setUp();
    gestures.begin(YARD, { part: 'corner', id: 'paving-1', index: 2 }, [14, 13]);
    gestures.move([14.3, 15.2], 60);
    gestures.end([14.3, 15.2], 60);
    expect(findThing(seen.changed[0].yard, 'paving-1')).toMatchObject({
      outline: [
        [10, 10],
        [14, 10],
        [14, 15],
        [10, 13],
      ],
    });
    gestures.begin(YARD, { part: 'corner', id: 'paving-1', index: 0 }, [10, 10]);
    gestures.move([8.3, 2.2], 60);
    gestures.end([8.3, 2.2], 60);
    expect(findThing(seen.changed[1].yard, 'paving-1')).toMatchObject({
      outline: [
        [8, 2],
        [14, 10],
        [14, 13],
        [10, 13],
      ],
    });
  });

  it('the middle of a side becomes a corner', () => {
    const { gestures, seen } = setUp();
    gestures.begin(YARD, { part: 'middle', id: 'wall-1', index: 0 }, [5, 2]);
    gestures.move([5, 6], 60);
    gestures.end([5, 6], 60);
    expect((findThing(seen.changed[0].yard, 'wall-1') as Wall).line).toEqual([
      [2, 2],
      [5, 6],
      [8, 2],
    ]);
  });

  it('turns the cold wind, and leaves a slope that is not there alone', () => {
    const { gestures, seen } = setUp();
    gestures.begin(YARD, { part: 'bearing', of: 'wind' }, [0, 16]);
    gestures.move([10, 18], 60);
    gestures.end([10, 18], 60);
    expect(seen.changed[0].yard.coldWindFromDeg).toBe(0);
    gestures.begin(YARD, { part: 'bearing', of: 'slope' }, [0, 16]);
    gestures.move([10, 18], 60);
    gestures.end([10, 18], 60);
    expect(seen.changed[1].yard).toEqual(YARD);
  });

  it('tells of a point on open ground; without snapping to 5 cm', () => {
    const { gestures, seen, click } = setUp();
    click([12.34, 5.678]);
    gestures.snapping = { ...gestures.snapping, on: false };
    click([12.34, 5.678]);
    expect(seen.pointed).toEqual([
      [12.5, 5.5],
      [12.35, 5.7],
    ]);
  });

  it('Escape in the middle of a drag leaves the yard as it was', () => {
    const { gestures, seen } = setUp();
    gestures.begin(YARD, { part: 'spot', id: 'spot-1' }, [5, 3]);
    gestures.move([9, 9], 100);
    gestures.cancel();
    gestures.end([9, 9], 100);
    expect(seen.moving.at(-1)).toBe(YARD);
    expect(seen.changed).toEqual([]);
  });
});
