/**
 * Writes coverage.json, the table behind the claim that the 90 % ranges of the share living hold the truth.
 * Run from the repository: npx esbuild tests/reference/life/coverage-table.ts --bundle --platform=node
 *   --format=esm --outfile=.cache/life-coverage.mjs && node .cache/life-coverage.mjs tests/reference/life/coverage.json [BLOCK]
 */
import { writeFileSync } from 'node:fs';
import { BLOCK_WINTERS, RING_DRAWS } from '../../../analysis/tree/life/rings.ts';
import { coverageOf, type History } from './coverage.ts';

const REPETITIONS = 1000;
const [path, block = String(BLOCK_WINTERS)] = process.argv.slice(2);
const kinds = [
  [0, 60],
  [0, 40],
  [0.3, 60],
  [0.3, 40],
  [0.5, 60],
] as const;
const histories = kinds.flatMap(([serial, winters]) =>
  [6, 1].flatMap((startAgeYears) =>
    [12, 20, 40].map((killOneIn): History => ({ serial, winters, startAgeYears, killOneIn })),
  ),
);
const rows = histories.map((history) => ({
  ...history,
  ages: coverageOf(history, REPETITIONS, { draws: RING_DRAWS, block: Number(block) }),
}));
const about =
  'How often the 90 % range of the share living at 10 and 20 years holds the true share, on invented histories; made by coverage-table.ts, a measurement of this project, not outside truth';
writeFileSync(
  path!,
  `{"about":${JSON.stringify(about)},"repetitions":${REPETITIONS},"draws":${RING_DRAWS},"block":${block},"rows":[\n` +
    rows.map((row) => JSON.stringify(row)).join(',\n') +
    '\n]}\n',
);
