/** With how many cases each property of a reader is tried: in `npm test`, and in `npm run test:long`. */
export const CASES = { short: 500, long: 10_000 } as const;
