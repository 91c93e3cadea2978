/** Red, green, blue, 0-255. */
export type Rgb = readonly [number, number, number];

/** The ramp of offsets: ground where there is none, ink-blue the colder, ochre the milder. */
export interface FieldColours {
  readonly ground: Rgb;
  readonly cold: readonly Rgb[];
  readonly warm: readonly Rgb[];
}

/** Offsets at which each colour of a side is reached, °C; beyond the last it stays. */
export const RAMP_STOPS_C = [1.1, 2.8, 4.5] as const;

/** Colour of an offset, between the stops by shares. */
export function offsetColour(offsetC: number, { ground, cold, warm }: FieldColours): Rgb {
  const side = offsetC < 0 ? cold : warm;
  const size = Math.abs(offsetC);
  let [fromC, from] = [0, ground];
  for (const [i, stopC] of RAMP_STOPS_C.entries()) {
    const to = side[Math.min(i, side.length - 1)];
    if (size <= stopC) return mix(from, to, (size - fromC) / (stopC - fromC));
    [fromC, from] = [stopC, to];
  }
  return from;
}

function mix(a: Rgb, b: Rgb, share: number): Rgb {
  return [0, 1, 2].map((i) => a[i] + (b[i] - a[i]) * share) as unknown as Rgb;
}

/** Colours ready for many cells: tenths of a degree from -6 to 6 °C. */
export function colourTable(colours: FieldColours): (offsetC: number) => Rgb {
  const GRAIN = 20;
  const MOST_C = 6;
  const table = Array.from({ length: 2 * MOST_C * GRAIN + 1 }, (_, i) =>
    offsetColour(i / GRAIN - MOST_C, colours),
  );
  return (offsetC) => table[Math.max(0, Math.min(table.length - 1, Math.round((offsetC + MOST_C) * GRAIN)))];
}
