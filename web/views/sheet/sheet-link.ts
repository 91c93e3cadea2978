import { encode } from 'uqr';
import { t } from '../../../analysis/language/t.ts';
import { pointOfSpot } from '../../../analysis/spot/spot-text.ts';
import { writeAddress } from '../../state/address.ts';
import type { Chosen } from '../../state/chosen.ts';
import { foldQuery } from '../../state/short-address.ts';

/** Smallest side of a module on paper, mm: from the distance of a page in the hand a phone still parts them. */
export const MODULE_MIN_MM = 0.4;
const MODULE_MAX_MM = 0.5;
/**
 * Levels of error correction and the largest code at each (ISO/IEC 18004, byte mode): M bears 15 % of it unreadable and holds
 * 450 bytes in version 16; a longer link takes L, which bears 7 % and holds 718 bytes in version 18, 89 modules a side.
 */
const SIZES = [
  { ecc: 'M', version: 16, bytes: 450 },
  { ecc: 'L', version: 18, bytes: 718 },
] as const;
/** Bytes of the longest link that gets a code. */
export const LINK_BYTES_MAX = SIZES[1].bytes;
/** Rim that stays white around a code, modules (ISO/IEC 18004). */
export const QUIET_MODULES = 4;

/** The way back from paper to the page as it stands. */
export interface SheetLink {
  readonly url: string;
  /** `null`: even with everything bulky left out the link is too long for a code. */
  readonly code: { readonly modules: number; readonly path: string } | null;
  /** What the link does not hold, a sentence; `''` where it restores everything. */
  readonly leftOut: string;
}

/** What bulky choices are given up for a code, in this order; each with all before it. */
function candidates(chosen: Chosen): readonly { readonly chosen: Chosen; readonly leftOut: string }[] {
  const whole = { chosen, leftOut: '' };
  const { yard: _, ...noYard } = chosen;
  const { spot, ...noSpot } = noYard;
  const yardless = pointOfSpot(spot ?? null) === null ? noYard : noSpot;
  const { pins: _p, area: _a, measured: _m, wishes: _w, ...bare } = yardless;
  return [
    whole,
    {
      chosen: yardless,
      leftOut: t`The yard drawn is too much for a code that a phone can read: the link leaves it out.`,
    },
    {
      chosen: bare,
      leftOut: t`Yard, pins, area and own readings are too much for a code that a phone can read: the link leaves them out.`,
    },
  ];
}

/**
 * The link of these choices with a code to scan, as whole as fits.
 * @param base address of the page, without a query
 */
export async function sheetLink(chosen: Chosen, base: string): Promise<SheetLink> {
  const tried = [];
  for (const { chosen: part, leftOut } of candidates(chosen)) {
    const plain = writeAddress(part);
    const folded = plain === '' ? plain : await foldQuery(plain);
    const url = base + (folded.length < plain.length ? folded : plain);
    tried.push(url);
    if (bytesOf(url) <= LINK_BYTES_MAX)
      return { url, code: codeOf(url), leftOut: tried[0] === url ? '' : leftOut };
  }
  return {
    url: tried[0],
    code: null,
    leftOut: t`What was chosen is too much for a code that a phone can read.`,
  };
}

/** The dark modules of a code as one path, a module a unit, the quiet rim not in it. @throws RangeError for a link too long */
export function codeOf(url: string): { modules: number; path: string } {
  const length = bytesOf(url);
  const { ecc, version } = SIZES.find(({ bytes }) => length <= bytes) ?? SIZES[1];
  const { size, data } = encode(url, { ecc, border: 0, maxVersion: version });
  const runs = data.flatMap((row, y) => {
    const found: string[] = [];
    for (let x = 0; x < size; x++) {
      if (!row[x]) continue;
      const from = x;
      while (row[x + 1]) x++;
      found.push(`M${from},${y}h${x + 1 - from}v1h-${x + 1 - from}z`);
    }
    return found;
  });
  return { modules: size, path: runs.join('') };
}

function bytesOf(url: string): number {
  return new TextEncoder().encode(url).length;
}

/** Side of the printed code with its rim, mm: modules as large as they need be, never smaller than can be read. */
export function codeSideMm(modules: number): number {
  const most = 17 + 4 * SIZES[1].version + 2 * QUIET_MODULES;
  const across = modules + 2 * QUIET_MODULES;
  return Math.min(MODULE_MAX_MM * across, MODULE_MIN_MM * most);
}
