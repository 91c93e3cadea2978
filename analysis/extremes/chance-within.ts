/** Chance of at least one hit in `winters` independent winters when one winter's chance is `chance`. */
export function chanceWithin(chance: number, winters: number): number {
  return chance >= 1 ? (winters > 0 ? 1 : 0) : -Math.expm1(winters * Math.log1p(-chance));
}
