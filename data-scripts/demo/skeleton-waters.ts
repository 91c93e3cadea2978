import type { Shore } from './skeleton-shores.ts';

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
