/**
 * The hand-placed skeleton of the invented coast, in degrees east and north. Nothing real lies there: it is open sea in
 * the middle of the North Atlantic. The Sallowmere Coast is the island's south-east; the far shores are only sketched.
 */

/** A point of a shore: longitude, latitude, and how rugged the shore is from here to the next point (0 beach, 1 cliffs). */
export type ShorePoint = readonly [lon: number, lat: number, ruggedness: number];

/** A closed shore with the name a map would print. */
export interface Shore {
  readonly name: string;
  readonly points: readonly ShorePoint[];
}

/** A river from source to mouth; `meander` is the swing of its bends in km on the plain. */
export interface RiverCourse {
  readonly name: string;
  readonly meanderKm: number;
  /** Height of the source above the sea, m. */
  readonly sourceM: number;
  /** Height of the mouth (or of the meeting with the larger river), m. */
  readonly mouthM: number;
  readonly points: readonly (readonly [lon: number, lat: number])[];
}

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

/** The main island, clockwise from its north-east corner; Tern Bay and the Ewer's estuary are part of this shore. */
export const MAIN_SHORE: Shore = {
  name: 'Sallowmere',
  points: [
    [-41.6, 32.22, 0.8],
    [-41.48, 32.04, 0.6],
    [-41.56, 31.86, 0.4],
    [-41.7, 31.77, 0.3],
    [-41.755, 31.715, 0.3],
    [-41.69, 31.645, 0.5],
    [-41.53, 31.6, 0.8],
    [-41.385, 31.535, 1],
    [-41.335, 31.455, 1],
    [-41.43, 31.39, 0.6],
    [-41.53, 31.335, 0.6],
    [-41.585, 31.285, 0.7],
    [-41.66, 31.262, 0.5],
    [-41.705, 31.272, 0.4],
    [-41.665, 31.225, 0.6],
    [-41.64, 31.165, 0.7],
    [-41.69, 31.105, 0.7],
    [-41.655, 31.045, 0.7],
    [-41.69, 30.975, 0.6],
    [-41.755, 30.915, 0.6],
    [-41.815, 30.895, 0.6],
    [-41.85, 30.94, 0.5],
    [-41.9, 31.0, 0.5],
    [-41.905, 31.07, 0.4],
    [-41.955, 31.115, 0.4],
    [-41.998, 31.165, 0.3],
    [-42.025, 31.203, 0.2],
    [-42.048, 31.232, 0.1],
    [-42.058, 31.228, 0.1],
    [-42.048, 31.195, 0.2],
    [-42.05, 31.155, 0.4],
    [-42.02, 31.11, 0.4],
    [-42.03, 31.06, 0.45],
    [-42.095, 31.02, 0.4],
    [-42.1, 30.965, 0.5],
    [-42.15, 30.915, 0.4],
    [-42.125, 30.84, 0.35],
    [-42.055, 30.785, 0.2],
    [-41.985, 30.785, 0.1],
    [-41.925, 30.825, 0],
    [-41.9, 30.862, 0],
    [-41.912, 30.872, 0],
    [-41.893, 30.858, 0],
    [-41.888, 30.82, 0.05],
    [-41.93, 30.745, 0.3],
    [-41.985, 30.68, 0.6],
    [-42.09, 30.63, 0.25],
    [-42.27, 30.605, 0.1],
    [-42.42, 30.545, 0.06],
    [-42.515, 30.455, 0.04],
    [-42.535, 30.395, 0.02],
    [-42.555, 30.455, 0.04],
    [-42.65, 30.54, 0.1],
    [-42.82, 30.59, 0.15],
    [-42.98, 30.595, 0.3],
    [-43.075, 30.64, 0.3],
    [-43.092, 30.69, 0.5],
    [-43.122, 30.745, 0.1],
    [-43.13, 30.745, 0.3],
    [-43.135, 30.7, 0.6],
    [-43.15, 30.635, 0.5],
    [-43.27, 30.58, 0.5],
    [-43.5, 30.64, 0.6],
    [-43.68, 30.79, 0.7],
    [-43.86, 30.93, 0.6],
    [-43.8, 31.15, 0.6],
    [-43.93, 31.42, 0.8],
    [-43.84, 31.72, 0.8],
    [-43.66, 31.9, 0.7],
    [-43.62, 32.14, 0.8],
    [-43.3, 32.34, 0.9],
    [-43.02, 32.27, 0.7],
    [-42.76, 32.41, 0.9],
    [-42.42, 32.36, 0.8],
    [-42.16, 32.23, 0.6],
    [-41.88, 32.32, 0.8],
  ],
};

/** Islands, each a closed shore. */
export const ISLANDS: readonly Shore[] = [
  {
    name: 'Long Strand',
    points: [
      [-41.478, 31.297, 0.02],
      [-41.515, 31.24, 0.02],
      [-41.557, 31.17, 0.02],
      [-41.58, 31.095, 0.02],
      [-41.585, 31.052, 0.02],
      [-41.594, 31.045, 0.02],
      [-41.603, 31.062, 0.3],
      [-41.597, 31.105, 0.6],
      [-41.585, 31.15, 0.6],
      [-41.578, 31.185, 0.6],
      [-41.538, 31.243, 0.5],
      [-41.492, 31.297, 0.1],
    ],
  },
  {
    name: 'Little Strand',
    points: [
      [-41.592, 31.02, 0.02],
      [-41.612, 30.955, 0.02],
      [-41.652, 30.887, 0.02],
      [-41.7, 30.852, 0.02],
      [-41.712, 30.856, 0.02],
      [-41.69, 30.875, 0.3],
      [-41.663, 30.91, 0.6],
      [-41.63, 30.965, 0.5],
      [-41.606, 31.022, 0.1],
    ],
  },
  {
    name: 'Heron Isle',
    points: [
      [-42.005, 30.972, 0.6],
      [-41.975, 30.945, 0.4],
      [-41.985, 30.915, 0.4],
      [-42.012, 30.885, 0.4],
      [-42.028, 30.912, 0.4],
      [-42.042, 30.93, 0.5],
      [-42.03, 30.96, 0.5],
    ],
  },
  {
    name: 'Mew Rocks',
    points: [
      [-41.262, 31.437, 0.9],
      [-41.246, 31.418, 0.9],
      [-41.272, 31.409, 0.9],
    ],
  },
  {
    name: 'Tatter Rock',
    points: [
      [-41.286, 31.482, 0.9],
      [-41.274, 31.469, 0.9],
      [-41.293, 31.466, 0.9],
    ],
  },
  {
    name: 'Far Skerry',
    points: [
      [-41.158, 30.433, 0.5],
      [-41.143, 30.43, 0.5],
      [-41.142, 30.416, 0.5],
      [-41.152, 30.411, 0.5],
      [-41.166, 30.421, 0.5],
    ],
  },
];

/** Lakes, each a closed shore. */
export const LAKES: readonly Shore[] = [
  {
    name: 'Sallow Mere',
    points: [
      [-42.205, 31.132, 0.5],
      [-42.175, 31.118, 0.3],
      [-42.158, 31.092, 0.3],
      [-42.185, 31.072, 0.3],
      [-42.183, 31.045, 0.5],
      [-42.222, 31.028, 0.4],
      [-42.25, 31.045, 0.5],
      [-42.285, 31.06, 0.3],
      [-42.262, 31.088, 0.4],
      [-42.243, 31.1, 0.4],
      [-42.238, 31.124, 0.5],
    ],
  },
  {
    name: 'Corrow Water',
    points: [
      [-42.87, 31.668, 0.3],
      [-42.836, 31.635, 0.3],
      [-42.79, 31.598, 0.3],
      [-42.766, 31.57, 0.2],
      [-42.778, 31.568, 0.3],
      [-42.812, 31.592, 0.3],
      [-42.86, 31.634, 0.3],
      [-42.884, 31.668, 0.2],
    ],
  },
  {
    name: 'Sedge Broad',
    points: [
      [-41.835, 31.2, 0.4],
      [-41.812, 31.19, 0.4],
      [-41.798, 31.165, 0.5],
      [-41.82, 31.152, 0.4],
      [-41.845, 31.17, 0.5],
    ],
  },
];

/** Rivers, largest first. */
export const RIVERS: readonly RiverCourse[] = [
  {
    name: 'Ewer',
    meanderKm: 1.1,
    sourceM: 330,
    mouthM: 0,
    points: [
      [-42.99, 31.77],
      [-42.93, 31.715],
      [-42.878, 31.668],
      [-42.828, 31.615],
      [-42.772, 31.569],
      [-42.68, 31.52],
      [-42.57, 31.48],
      [-42.44, 31.42],
      [-42.3, 31.37],
      [-42.17, 31.3],
      [-42.1, 31.27],
      [-42.053, 31.229],
    ],
  },
  {
    name: 'Little Ewer',
    meanderKm: 0.7,
    sourceM: 150,
    mouthM: 14,
    points: [
      [-42.52, 31.86],
      [-42.47, 31.74],
      [-42.38, 31.62],
      [-42.35, 31.5],
      [-42.3, 31.37],
    ],
  },
  {
    name: 'Thistle Brook',
    meanderKm: 0.6,
    sourceM: 110,
    mouthM: 24,
    points: [
      [-42.98, 31.33],
      [-42.83, 31.3],
      [-42.68, 31.32],
      [-42.54, 31.36],
      [-42.44, 31.42],
    ],
  },
  {
    name: 'Wend',
    meanderKm: 0.7,
    sourceM: 90,
    mouthM: 0,
    points: [
      [-42.18, 31.86],
      [-42.08, 31.78],
      [-41.96, 31.745],
      [-41.85, 31.7],
      [-41.753, 31.714],
    ],
  },
  {
    name: 'Rill',
    meanderKm: 0.7,
    sourceM: 150,
    mouthM: 0,
    points: [
      [-43.2, 31.27],
      [-43.12, 31.15],
      [-43.15, 31],
      [-43.1, 30.86],
      [-43.126, 30.745],
    ],
  },
  {
    name: 'Mere Leat',
    meanderKm: 0.4,
    sourceM: 40,
    mouthM: 0,
    points: [
      [-42.55, 31.07],
      [-42.42, 31.1],
      [-42.33, 31.08],
      [-42.25, 31.085],
    ],
  },
  {
    name: 'Hollin Beck',
    meanderKm: 0.5,
    sourceM: 300,
    mouthM: 100,
    points: [
      [-43.16, 31.66],
      [-43.08, 31.7],
      [-42.98, 31.68],
      [-42.9, 31.69],
    ],
  },
  {
    name: 'Scar Beck',
    meanderKm: 0.5,
    sourceM: 260,
    mouthM: 60,
    points: [
      [-43.02, 31.47],
      [-42.95, 31.5],
      [-42.84, 31.49],
      [-42.72, 31.538],
    ],
  },
  {
    name: 'Tarn Beck',
    meanderKm: 0.5,
    sourceM: 230,
    mouthM: 90,
    points: [
      [-42.72, 31.83],
      [-42.73, 31.74],
      [-42.7, 31.66],
      [-42.7, 31.59],
      [-42.69, 31.525],
    ],
  },
  {
    name: 'Otter Water',
    meanderKm: 0.8,
    sourceM: 200,
    mouthM: 0,
    points: [
      [-43.25, 31.56],
      [-43.4, 31.5],
      [-43.52, 31.36],
      [-43.64, 31.28],
      [-43.79, 31.17],
    ],
  },
  {
    name: 'North Water',
    meanderKm: 0.8,
    sourceM: 230,
    mouthM: 0,
    points: [
      [-42.98, 31.86],
      [-42.95, 31.98],
      [-43.0, 32.1],
      [-43.01, 32.26],
    ],
  },
  {
    name: 'Saltern Brook',
    meanderKm: 0.6,
    sourceM: 45,
    mouthM: 0,
    points: [
      [-42.52, 30.98],
      [-42.62, 30.86],
      [-42.66, 30.72],
      [-42.76, 30.58],
    ],
  },
  {
    name: 'Wickel Brook',
    meanderKm: 0.5,
    sourceM: 40,
    mouthM: 0,
    points: [
      [-42.42, 30.93],
      [-42.33, 30.91],
      [-42.24, 30.94],
      [-42.145, 30.915],
    ],
  },
  {
    name: 'Mere Gut',
    meanderKm: 0.3,
    sourceM: 6,
    mouthM: 0,
    points: [
      [-42.17, 31.09],
      [-42.1, 31.075],
      [-42.03, 31.058],
    ],
  },
];

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
