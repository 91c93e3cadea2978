import { isArrowKey, type ArrowKey } from './nearest-in-direction.ts';

/** What the keys do on the map. */
export interface MapKeys {
  /** An arrow: to the next station or cell that way; `far`: with shift. */
  arrow(key: ArrowKey, far: boolean): void;
  /** Enter or space; false when there is nothing to choose. */
  choose(): boolean;
  zoomBy(levels: number): void;
  fit(): void;
  /** R: the arrows read the surface, or no longer. */
  toggleReading(): void;
  leave(): void;
}

/** Px that shift and an arrow move the map. */
const PAN_PX = 90;
export const PANS: Record<ArrowKey, readonly [x: number, y: number]> = {
  ArrowLeft: [-PAN_PX, 0],
  ArrowRight: [PAN_PX, 0],
  ArrowUp: [0, -PAN_PX],
  ArrowDown: [0, PAN_PX],
};

/** Hands a key to what it does; keys with ctrl, alt or meta are the browser's. */
export function onMapKey(event: KeyboardEvent, keys: MapKeys): void {
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  const { key } = event;
  if (isArrowKey(key)) {
    event.preventDefault();
    keys.arrow(key, event.shiftKey);
  } else if (key === 'Enter' || key === ' ') {
    if (keys.choose()) event.preventDefault();
  } else if (key === '+' || key === '=') keys.zoomBy(1);
  else if (key === '-') keys.zoomBy(-1);
  else if (key === '0') keys.fit();
  else if (key === 'r' || key === 'R') keys.toggleReading();
  else if (key === 'Escape') keys.leave();
}
