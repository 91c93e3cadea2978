import { t } from '../language/t.ts';

const SIDES = [
  t`north`,
  t`north-east`,
  t`east`,
  t`south-east`,
  t`south`,
  t`south-west`,
  t`west`,
  t`north-west`,
];

/** Name of the wind or side that a bearing, degrees clockwise from north, points to, of eight, in the language chosen: `south-west`. */
export function sideName(bearingDeg: number): string {
  return SIDES[((Math.round(bearingDeg / 45) % 8) + 8) % 8];
}
