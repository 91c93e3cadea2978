import { t } from '../../analysis/language/t.ts';
import type { PlanPoint, Yard, YardSpot, YardThing } from '../../analysis/spot/yard.ts';
import { toGrain } from './snapping.ts';

/** Corners of a thing in order; a hollow or rise has its middle alone. */
export function cornersOf(thing: YardThing): readonly PlanPoint[] {
  if ('outline' in thing) return thing.outline;
  if ('line' in thing) return thing.line;
  return [thing.at];
}

/** The same thing with other corners. */
export function withCorners(thing: YardThing, corners: readonly PlanPoint[]): YardThing {
  if ('outline' in thing) return { ...thing, outline: corners };
  if ('line' in thing) return { ...thing, line: corners };
  return { ...thing, at: corners[0] };
}

/** Fewer corners make no such thing. */
export function fewestCorners(thing: YardThing): number {
  return 'outline' in thing ? 3 : 'line' in thing ? 2 : 1;
}

/** West, south, east, north of some points, m. */
export function extentOf(corners: readonly PlanPoint[]): [number, number, number, number] {
  const [easts, norths] = [corners.map(([east]) => east), corners.map(([, north]) => north)];
  return [Math.min(...easts), Math.min(...norths), Math.max(...easts), Math.max(...norths)];
}

/** A thing moved; it stays on the plot if it fits there. */
export function movedBy<T extends YardThing | YardSpot>(
  thing: T,
  [eastM, northM]: PlanPoint,
  { widthM, depthM }: Pick<Yard, 'widthM' | 'depthM'>,
): T {
  const corners = 'kind' in thing ? cornersOf(thing) : [thing.at];
  const [west, south, east, north] = extentOf(corners);
  const keep = (by: number, low: number, high: number, size: number): number =>
    high - low > size ? by : Math.max(-low, Math.min(by, size - high));
  const [dx, dy] = [keep(eastM, west, east, widthM), keep(northM, south, north, depthM)];
  const moved = corners.map(([x, y]): PlanPoint => [toGrain(x + dx), toGrain(y + dy)]);
  return ('kind' in thing ? withCorners(thing, moved) : { ...thing, at: moved[0] }) as T;
}

/** On the plot, at its edge if it was beyond. */
export function onPlot(
  [east, north]: PlanPoint,
  { widthM, depthM }: Pick<Yard, 'widthM' | 'depthM'>,
): PlanPoint {
  return [Math.max(0, Math.min(east, widthM)), Math.max(0, Math.min(north, depthM))];
}

/** The yard with a thing in the place of the one with its id, or added. */
export function putThing(yard: Yard, thing: YardThing): Yard {
  const known = yard.things.some(({ id }) => id === thing.id);
  const things = known
    ? yard.things.map((entry) => (entry.id === thing.id ? thing : entry))
    : [...yard.things, thing];
  return { ...yard, things };
}

export function putSpot(yard: Yard, spot: YardSpot): Yard {
  const known = yard.spots.some(({ id }) => id === spot.id);
  const spots = known
    ? yard.spots.map((entry) => (entry.id === spot.id ? spot : entry))
    : [...yard.spots, spot];
  return { ...yard, spots };
}

/** The yard without a thing or spot. */
export function without(yard: Yard, id: string): Yard {
  return {
    ...yard,
    things: yard.things.filter((thing) => thing.id !== id),
    spots: yard.spots.filter((spot) => spot.id !== id),
  };
}

export function findThing(yard: Yard, id: string | null): YardThing | null {
  return yard.things.find((thing) => thing.id === id) ?? null;
}

export function findSpot(yard: Yard, id: string | null): YardSpot | null {
  return yard.spots.find((spot) => spot.id === id) ?? null;
}

/** An id of the kind that the yard doesn't have yet: `wall-2`. */
export function freshId(yard: Yard, kind: string): string {
  const taken = new Set([...yard.things, ...yard.spots].map(({ id }) => id));
  let number = 1;
  while (taken.has(`${kind}-${number}`)) number++;
  return `${kind}-${number}`;
}

/** A thing or spot once more, a little aside; the new one's id with it, `null` where there is none. */
export function duplicated(yard: Yard, id: string): { readonly yard: Yard; readonly id: string | null } {
  const ASIDE: PlanPoint = [1, -1];
  const thing = findThing(yard, id);
  if (thing) {
    const copy = movedBy({ ...thing, id: freshId(yard, thing.kind) }, ASIDE, yard);
    return { yard: putThing(yard, copy), id: copy.id };
  }
  const spot = findSpot(yard, id);
  if (!spot) return { yard, id: null };
  const copy = movedBy({ ...spot, id: freshId(yard, 'spot'), name: t`${spot.name}, again` }, ASIDE, yard);
  return { yard: putSpot(yard, copy), id: copy.id };
}
