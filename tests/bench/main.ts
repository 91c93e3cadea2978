import { mkdir, writeFile } from 'node:fs/promises';
import { benchBatch } from './bench-batch.ts';
import { benchBuild } from './bench-build.ts';
import { benchAnswer } from './bench-answer.ts';
import { benchExtremes } from './bench-extremes.ts';
import { benchLife } from './bench-life.ts';
import { benchPage } from './bench-page.ts';
import { benchPlace } from './bench-place.ts';
import type { BenchRow } from './bench-row.ts';
import { benchVisitor } from './bench-visitor.ts';
import { benchYard } from './bench-yard.ts';
import { print, runCommand, UsageError } from '../../data-scripts/commands/run-command.ts';

/** Parts of the benchmark by the name that picks them. */
const PARTS = {
  answer: benchAnswer,
  place: benchPlace,
  batch: benchBatch,
  yard: benchYard,
  life: benchLife,
  page: benchPage,
  visitor: benchVisitor,
  build: benchBuild,
  extremes: benchExtremes,
};

const HELP = `npm run bench [-- PART...]

PART: ${Object.keys(PARTS).join(', ')}; all of them unless told. place makes a pack of 5,000 invented stations in
.cache/bench-packs (80 MB) the first time.
page, visitor and batch measure what \`npm test\` has built.
Measures what the budgets name, side by side with R (data.table, evd) and Python (pandas, SciPy) where they are installed.
Prints Markdown; the same as JSON goes to .cache/bench.json.
`;

await runCommand('bench', async () => {
  if (process.argv.includes('--help')) return print(HELP);
  const asked = process.argv.slice(2);
  const unknown = asked.find((name) => !Object.hasOwn(PARTS, name));
  if (unknown !== undefined) throw new UsageError(`there is no part "${unknown}" of the benchmark`);
  const rows: BenchRow[] = [];
  for (const [name, part] of Object.entries(PARTS))
    if (asked.length === 0 || asked.includes(name)) rows.push(...(await part()));
  await mkdir('.cache', { recursive: true });
  await writeFile('.cache/bench.json', `${JSON.stringify(rows, null, 1)}\n`);
  await print(markdown(rows));
});

function markdown(rows: readonly BenchRow[]): string {
  const cells = rows.map(({ task, measured, unit, budget, ratio, note }) => [
    task,
    measured === null ? 'not there' : `${measured.toPrecision(3)} ${unit}`,
    budget === null ? '' : `${budget.most ? 'at most' : 'at least'} ${budget.value} ${unit}`,
    ratio === null ? '' : `${ratio.toPrecision(3)} ×`,
    note,
  ]);
  const header = ['task', 'measured', 'budget', 'against ours', 'note'];
  return [header, header.map(() => '---'), ...cells].map((row) => `| ${row.join(' | ')} |\n`).join('');
}
