import type { PlanPoint, Yard } from '../../analysis/spot/yard.ts';
import { CORNERS_MAX } from '../../analysis/spot/yard.ts';
import { withBearing, type BearingOf } from './bearings.ts';
import {
  cornersOf,
  fewestCorners,
  findSpot,
  findThing,
  movedBy,
  onPlot,
  putSpot,
  putThing,
  withCorners,
} from './edit-yard.ts';
import { snapMove, snapPoint, type Snapping } from './snapping.ts';
import { corneredThing, draggedCorners, draggedThing, type Tool } from './tools.ts';

/** What of the plan lies under the pointer. */
export type PlanHit =
  | { readonly part: 'thing' | 'spot'; readonly id: string }
  /** A corner, or the middle of a side, which becomes a corner when dragged. */
  | { readonly part: 'corner' | 'middle'; readonly id: string; readonly index: number }
  /** An arrow in the margin, turned by dragging. */
  | { readonly part: 'bearing'; readonly of: BearingOf };

/** What comes of gestures. */
export interface GestureEvents {
  /** At every move; nothing is settled yet. */
  readonly moving: (yard: Yard) => void;
  /** Settled; `selectId` is the thing it was done to. */
  readonly changed: (yard: Yard, selectId: string | null) => void;
  readonly selected: (id: string | null) => void;
  /** Open ground was pointed at. */
  readonly pointed: (at: PlanPoint) => void;
  /** Corners of what is being drawn, none when it is finished or given up. */
  readonly sketched: (corners: readonly PlanPoint[]) => void;
}

type Going =
  | { readonly doing: 'move'; readonly id: string; readonly from: PlanPoint }
  | {
      readonly doing: 'corner';
      readonly id: string;
      readonly index: number;
      readonly corners: readonly PlanPoint[];
    }
  | { readonly doing: 'turn'; readonly of: BearingOf }
  | { readonly doing: 'draw'; readonly from: PlanPoint }
  | { readonly doing: 'point' };

/** Turns the pointer's ways over the plan into edits of the yard. Knows no canvas and no browser. */
export class PlanGestures {
  tool: Tool | null = null;
  snapping: Snapping = { on: true, gridM: 0.5, cornerM: 0.6 };
  #yard: Yard | null = null;
  #going: Going | null = null;
  #moved: Yard | null = null;
  #sketch: readonly PlanPoint[] = [];

  constructor(private readonly events: GestureEvents) {}

  /** Corners set so far of a thing drawn corner by corner. */
  get sketch(): readonly PlanPoint[] {
    return this.#sketch;
  }
  get busy(): boolean {
    return this.#going !== null;
  }

  /** The pointer goes down. */
  begin(yard: Yard, hit: PlanHit | null, at: PlanPoint): void {
    this.#yard = yard;
    this.#moved = null;
    if (this.tool) {
      this.#going = { doing: 'draw', from: this.#snapped(onPlot(at, yard), null) };
    } else if (!hit) {
      this.#going = { doing: 'point' };
    } else if (hit.part === 'bearing') {
      this.#going = { doing: 'turn', of: hit.of };
    } else if (hit.part === 'corner' || hit.part === 'middle') {
      this.#beginCorner(yard, hit.id, hit.index, hit.part === 'middle', at);
    } else {
      this.#going = { doing: 'move', id: hit.id, from: at };
      this.events.selected(hit.id);
    }
  }

  #beginCorner(yard: Yard, id: string, index: number, isNew: boolean, at: PlanPoint): void {
    const thing = findThing(yard, id);
    if (!thing) return;
    const corners = cornersOf(thing);
    if (!isNew) this.#going = { doing: 'corner', id, index, corners };
    else if (corners.length < CORNERS_MAX)
      this.#going = {
        doing: 'corner',
        id,
        index: index + 1,
        corners: [...corners.slice(0, index + 1), at, ...corners.slice(index + 1)],
      };
  }

  /** The pointer moves; `farPx` is its way since it went down. */
  move(at: PlanPoint, farPx: number): void {
    const [yard, going] = [this.#yard, this.#going];
    if (!yard) return;
    if (!going) {
      if (this.tool && this.#sketch.length > 0)
        this.events.sketched([...this.#sketch, this.#snapped(onPlot(at, yard), null)]);
      return;
    }
    if (going.doing === 'point' || (farPx < 4 && !this.#moved)) return;
    if (going.doing === 'draw') {
      if (this.#sketch.length > 0) return;
      this.events.sketched(draggedCorners(this.tool!, going.from, this.#drawnTo(yard, going.from, at)));
      return;
    }
    this.#moved = this.#movedYard(yard, going, at);
    this.events.moving(this.#moved);
  }

  #movedYard(yard: Yard, going: Exclude<Going, { doing: 'draw' | 'point' }>, at: PlanPoint): Yard {
    if (going.doing === 'turn') return withBearing(yard, going.of, at);
    if (going.doing === 'corner') {
      const thing = findThing(yard, going.id)!;
      const { corners, index } = going;
      const last = corners.length - 1;
      const closed = 'outline' in thing;
      const neighbours = [
        corners[index - 1] ?? (closed ? corners[last] : undefined),
        corners[index + 1] ?? (closed ? corners[0] : undefined),
      ].filter((corner) => corner !== undefined);
      const to = this.#snapped(onPlot(at, yard), going.id, neighbours);
      return putThing(
        yard,
        withCorners(
          thing,
          corners.map((corner, i) => (i === index ? to : corner)),
        ),
      );
    }
    const by: PlanPoint = [at[0] - going.from[0], at[1] - going.from[1]];
    const thing = findThing(yard, going.id);
    if (thing) return putThing(yard, movedBy(thing, snapMove(cornersOf(thing)[0], by, this.snapping), yard));
    const spot = findSpot(yard, going.id);
    return spot ? putSpot(yard, movedBy(spot, snapMove(spot.at, by, this.snapping), yard)) : yard;
  }

  /** The pointer goes up. */
  end(at: PlanPoint, farPx: number): void {
    const [yard, going] = [this.#yard, this.#going];
    this.#going = null;
    if (!yard || !going) return;
    if (going.doing === 'draw') return this.#endDrawing(yard, going.from, at, farPx);
    if (this.#moved) return this.events.changed(this.#moved, 'id' in going ? going.id : null);
    if (going.doing !== 'point') return;
    this.events.selected(null);
    this.events.pointed(this.#snapped(onPlot(at, yard), null));
  }

  #endDrawing(yard: Yard, from: PlanPoint, at: PlanPoint, farPx: number): void {
    const tool = this.tool!;
    const to = this.#drawnTo(yard, from, at);
    const dragged = farPx >= 4 && (from[0] !== to[0] || from[1] !== to[1]);
    if (this.#sketch.length === 0 && (dragged || tool.drawing === 'circle')) {
      this.#finish(yard, draggedThing(tool, yard, from, dragged ? to : [from[0] + tool.size[0], from[1]]));
      return;
    }
    const [first, last] = [this.#sketch[0], this.#sketch.at(-1)];
    const same = (a: PlanPoint | undefined): boolean => a !== undefined && a[0] === to[0] && a[1] === to[1];
    // Again on the last corner (a double click), or back on the first one: the thing is done.
    if (same(last) || (this.#sketch.length > 2 && same(first))) return void this.finishSketch();
    this.#sketch = [...this.#sketch, to];
    this.events.sketched(this.#sketch);
    if (this.#sketch.length >= CORNERS_MAX) this.finishSketch();
  }

  /** Where a stroke of the pointer ends; a line is kept square to where it began. */
  #drawnTo(yard: Yard, from: PlanPoint, at: PlanPoint): PlanPoint {
    const isStroke = this.#sketch.length === 0 && this.tool?.drawing === 'line';
    return this.#snapped(onPlot(at, yard), null, isStroke ? [from] : undefined);
  }

  /** Makes the thing of the corners set; nothing happens while they are too few. */
  finishSketch(): boolean {
    const [yard, tool] = [this.#yard, this.tool];
    if (!yard || !tool) return false;
    const thing = corneredThing(tool, yard, this.#sketch);
    if (this.#sketch.length < fewestCorners(thing)) return false;
    this.#finish(yard, thing);
    return true;
  }

  #finish(yard: Yard, thing: ReturnType<typeof corneredThing>): void {
    this.#sketch = [];
    this.events.sketched([]);
    this.events.changed(putThing(yard, thing), thing.id);
  }

  /** Gives up what is going on; true if there was something. */
  cancel(): boolean {
    const had = this.#going !== null || this.#sketch.length > 0;
    if (this.#moved && this.#yard) this.events.moving(this.#yard);
    this.#going = null;
    this.#moved = null;
    this.#sketch = [];
    this.events.sketched([]);
    return had;
  }

  #snapped(at: PlanPoint, ownId: string | null, neighbours?: readonly PlanPoint[]): PlanPoint {
    const corners = this.#yard!.things.filter(({ id }) => id !== ownId).flatMap((thing) => cornersOf(thing));
    const last = this.#sketch.at(-1);
    return snapPoint(at, this.snapping, { corners, neighbours: neighbours ?? (last ? [last] : []) });
  }
}
