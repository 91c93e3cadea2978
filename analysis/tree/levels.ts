/** What cold takes, from the tenderest to the hardiest: fruit, leaf and twig, major limbs, the tree down to its graft. */
export const LEVELS = ['fruit', 'leaf', 'wood', 'kill'] as const;
export type Level = (typeof LEVELS)[number];
