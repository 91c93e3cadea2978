/** A rounded hill mass: centre, height added at the centre, half-widths along and across its axis, turn of the axis. */
export interface HillMass {
  readonly lon: number;
  readonly lat: number;
  readonly heightM: number;
  readonly alongKm: number;
  readonly acrossKm: number;
  /** Degrees from east, counter-clockwise. */
  readonly axisDeg: number;
}

/** The Corrow Hills and lesser rises. */
export const HILL_MASSES: readonly HillMass[] = [
  { lon: -43.06, lat: 31.58, heightM: 415, alongKm: 15, acrossKm: 8, axisDeg: 38 },
  { lon: -42.86, lat: 31.86, heightM: 350, alongKm: 18, acrossKm: 8, axisDeg: 25 },
  { lon: -43.28, lat: 31.42, heightM: 280, alongKm: 12, acrossKm: 8, axisDeg: 62 },
  { lon: -43.2, lat: 31.78, heightM: 240, alongKm: 13, acrossKm: 9, axisDeg: 120 },
  { lon: -42.6, lat: 31.62, heightM: 120, alongKm: 9, acrossKm: 5, axisDeg: 35 },
  { lon: -42.62, lat: 31.96, heightM: 210, alongKm: 14, acrossKm: 9, axisDeg: 5 },
  { lon: -43.52, lat: 31.55, heightM: 190, alongKm: 18, acrossKm: 12, axisDeg: 95 },
  { lon: -43.2, lat: 32.1, heightM: 150, alongKm: 22, acrossKm: 10, axisDeg: 10 },
  { lon: -41.56, lat: 31.5, heightM: 85, alongKm: 12, acrossKm: 6, axisDeg: 160 },
  { lon: -42.5, lat: 30.85, heightM: 62, alongKm: 16, acrossKm: 6, axisDeg: 150 },
  { lon: -41.95, lat: 31.5, heightM: 48, alongKm: 12, acrossKm: 7, axisDeg: 60 },
  { lon: -42.1, lat: 31.98, heightM: 95, alongKm: 14, acrossKm: 8, axisDeg: 20 },
];
