/**
 * Writes coverage.json, the full table behind the claim that 90 % ranges hold the truth 85 to 95 % of the time.
 * Run from the repository: npx esbuild tests/reference/extremes/coverage-table.ts --bundle --platform=node
 *   --format=esm --outfile=.cache/coverage-table.mjs && node .cache/coverage-table.mjs tests/reference/extremes/coverage.json
 */
import { writeFileSync } from 'node:fs';
import { coverageRow } from './coverage.ts';

const REPETITIONS = 2000;
const DRAWS = 400;
const rows = [0, 8].flatMap((neighbours) =>
  [25, 40, 60].flatMap((winters) =>
    [-0.1, 0, 0.15, 0.25].map((k) => coverageRow(k, winters, REPETITIONS, DRAWS, neighbours)),
  ),
);
const about =
  'Share of 90 % ranges of the return period that hold the true period (key: true period in winters), and share that lie at rarer periods only; made by coverage-table.ts';
writeFileSync(
  process.argv[2]!,
  JSON.stringify({ about, repetitions: REPETITIONS, draws: DRAWS, rows }) + '\n',
);
