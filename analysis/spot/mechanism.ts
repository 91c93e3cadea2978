/**
 * What can make a spot milder or colder than the open station. Each counts once at a spot, however many things
 * bring it about.
 */
export const MECHANISM_IDS = [
  'warm-wall',
  'heated-wall',
  'wind-shelter',
  'sky-hidden',
  'paving',
  'bare-ground',
  'mulch-or-tall-grass',
  'pond',
  'big-water',
  'cold-air',
  'slope',
] as const;
export type MechanismId = (typeof MECHANISM_IDS)[number];
