const SOLAR_NOON_H = 12;
const RADIANS = Math.PI / 180;

/** Solar declination in radians, day of the year 1-366 (FAO-56 eq. 24). */
export function declinationFao(dayOfYear: number): number {
  return 0.409 * Math.sin((2 * Math.PI * dayOfYear) / 365 - 1.39);
}

/** Solar declination in radians, day of the year 1-366 (Spencer 1971, S41). */
export function declinationSpencer(dayOfYear: number): number {
  const g = (2 * Math.PI * (dayOfYear - 1)) / 365;
  return (
    0.006918 -
    0.399912 * Math.cos(g) +
    0.070257 * Math.sin(g) -
    0.006758 * Math.cos(2 * g) +
    0.000907 * Math.sin(2 * g) -
    0.002697 * Math.cos(3 * g) +
    0.00148 * Math.sin(3 * g)
  );
}

/**
 * Hour angle of sunset in radians, 0 in the polar night to pi in the polar day (FAO-56 eq. 25).
 * `zenithDeg` is the sun's zenith angle called sunset: 90 for its centre on a flat horizon, 90.833 with refraction and disc.
 */
export function sunsetAngle(latDeg: number, declination: number, zenithDeg = 90): number {
  const lat = latDeg * RADIANS;
  const cosine =
    (Math.cos(zenithDeg * RADIANS) - Math.sin(lat) * Math.sin(declination)) /
    (Math.cos(lat) * Math.cos(declination));
  return Math.acos(Math.min(1, Math.max(-1, cosine)));
}

/** Hours of daylight for a sunset angle in radians (FAO-56 eq. 34). */
export function dayLengthOfAngle(angle: number): number {
  return (24 / Math.PI) * angle;
}

/** Hours of daylight, 0-24, at a latitude in degrees north on a day of the year (FAO-56 eq. 24, 25, 34; M13). */
export function dayLengthH(latDeg: number, dayOfYear: number): number {
  return dayLengthOfAngle(sunsetAngle(latDeg, declinationFao(dayOfYear)));
}

/** Sunrise in local solar time, hours after midnight. */
export function sunriseH(dayLength: number): number {
  return SOLAR_NOON_H - dayLength / 2;
}

/** Sunset in local solar time, hours after midnight. */
export function sunsetH(dayLength: number): number {
  return SOLAR_NOON_H + dayLength / 2;
}
