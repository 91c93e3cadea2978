/** Plain colours for the map, which can't read CSS variables; all `rgb(...)` text. */
export interface MapPalette {
  readonly paper: string;
  readonly ink: string;
  readonly inkSoft: string;
  readonly rule: string;
  readonly accent: string;
  readonly land: string;
  readonly water: string;
  readonly coast: string;
  /** Steps 1-6 of the cold ramp. */
  readonly cold: readonly string[];
  /** Steps 1-3 of the warm ramp, the other side of a difference. */
  readonly warm: readonly string[];
}

const TOKENS = {
  paper: '--paper',
  ink: '--ink',
  inkSoft: '--ink-soft',
  rule: '--rule',
  accent: '--accent',
  land: '--land',
  water: '--water',
  coast: '--coast',
} as const;

/**
 * Colours of the page's tokens as they are at an element now. A probe's `color` resolves whatever the token holds
 * (`light-dark()`, a name, a mix) to plain rgb.
 */
export function readPalette(host: HTMLElement): MapPalette {
  const probe = host.ownerDocument.createElement('span');
  probe.style.display = 'none';
  host.append(probe);
  const resolve = (token: string): string => {
    probe.style.color = `var(${token})`;
    return getComputedStyle(probe).color;
  };
  const named = Object.fromEntries(
    Object.entries(TOKENS).map(([key, token]) => [key, resolve(token)]),
  ) as Record<keyof typeof TOKENS, string>;
  const cold = [1, 2, 3, 4, 5, 6].map((step) => resolve(`--cold-${step}`));
  const warm = [1, 2, 3].map((step) => resolve(`--warm-${step}`));
  probe.remove();
  return { ...named, cold, warm };
}

/** Channels 0-255 of `rgb(...)` text, also in the form with spaces; alpha is dropped. */
function channels(color: string): [number, number, number] {
  const found = color.match(/[\d.]+/g)?.map(Number) ?? [];
  const [r = 0, g = 0, b = 0] = color.startsWith('color(') ? found.map((value) => value * 255) : found;
  return [r, g, b];
}

/** Mix of two rgb colours; `share` 0 gives the first, 1 the second. */
export function mixColors(first: string, second: string, share: number): string {
  const [a, b] = [channels(first), channels(second)];
  return `rgb(${a.map((value, i) => Math.round(value + (b[i] - value) * share)).join(', ')})`;
}
