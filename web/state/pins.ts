import { PINS_MAX, type Place } from './chosen.ts';
import { writePin } from './place-text.ts';

/** Position among the pinned places, -1 when it isn't pinned. Places are the same when the address tells them alike. */
export function pinIndex(pins: readonly Place[], place: Place): number {
  const text = writePin(place);
  return pins.findIndex((pin) => writePin(pin) === text);
}

/** The pins with a place more, or as they are when it is there already or no more fit; then the way back: with it less. */
export function togglePin(pins: readonly Place[], place: Place): readonly Place[] {
  const at = pinIndex(pins, place);
  if (at >= 0) return pins.filter((_, i) => i !== at);
  return pins.length < PINS_MAX ? [...pins, place] : pins;
}
