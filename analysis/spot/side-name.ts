const SIDES = ['north', 'north-east', 'east', 'south-east', 'south', 'south-west', 'west', 'north-west'];

/** Name of the wind or side that a bearing, degrees clockwise from north, points to, of eight: `south-west`. */
export function sideName(bearingDeg: number): string {
  return SIDES[((Math.round(bearingDeg / 45) % 8) + 8) % 8];
}
