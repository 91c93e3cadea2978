import type { FieldColours, Rgb } from './field-colours.ts';

/** Plain colours of the page's tokens, for canvas. */
export interface PlanPalette {
  readonly paper: string;
  readonly ink: string;
  readonly inkSoft: string;
  readonly inkFaint: string;
  readonly rule: string;
  readonly accent: string;
  readonly warn: string;
  readonly water: string;
  readonly field: FieldColours;
}

/** Reads the tokens as they are at an element now; a probe's `color` turns whatever they hold into rgb. */
export function readPlanPalette(host: HTMLElement): PlanPalette {
  const probe = host.ownerDocument.createElement('span');
  probe.style.display = 'none';
  host.append(probe);
  const read = (token: string): string => {
    probe.style.color = `var(--${token})`;
    return getComputedStyle(probe).color;
  };
  const rgb = (token: string): Rgb => channels(read(token));
  const palette: PlanPalette = {
    paper: read('paper'),
    ink: read('ink'),
    inkSoft: read('ink-soft'),
    inkFaint: read('ink-faint'),
    rule: read('rule'),
    accent: read('accent'),
    warn: read('warn'),
    water: read('cold-4'),
    field: {
      ground: rgb('plan-ground'),
      cold: ['cold-2', 'cold-4', 'cold-6'].map(rgb),
      warm: ['milder-1', 'milder-2', 'milder-3'].map(rgb),
    },
  };
  probe.remove();
  return palette;
}

function channels(color: string): Rgb {
  const [r = 0, g = 0, b = 0] = color.match(/[\d.]+/g)?.map(Number) ?? [];
  return [r, g, b];
}
