/** How long the slow things may take, ms: the first surface, the database's engine, more where the machine is busy. */
export const PATIENCE_MS = 90_000;
/** How long a test with such things may take, ms. */
export const TEST_MS = 180_000;
