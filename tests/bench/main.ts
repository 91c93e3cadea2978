import { mkdir, writeFile } from 'node:fs/promises';
import { benchBuild } from './bench-build.ts';
import { benchAnswer } from './bench-answer.ts';
import { benchExtremes } from './bench-extremes.ts';
import type { BenchRow } from './bench-row.ts';
import { print, runCommand } from '../../data-scripts/commands/run-command.ts';

const HELP = `npm run bench

Measures what the budgets name, side by side with R (data.table, evd) and Python (pandas, SciPy) where they are installed.
Prints Markdown; the same as JSON goes to .cache/bench.json.
`;

await runCommand('bench', async () => {
  if (process.argv.includes('--help')) return print(HELP);
  const rows: BenchRow[] = [];
  for (const part of [benchAnswer, benchBuild, benchExtremes]) rows.push(...(await part()));
  await mkdir('.cache', { recursive: true });
  await writeFile('.cache/bench.json', `${JSON.stringify(rows, null, 1)}\n`);
  await print(markdown(rows));
});

function markdown(rows: readonly BenchRow[]): string {
  const cells = rows.map(({ task, measured, unit, budget, ratio, note }) => [
    task,
    measured === null ? 'not installed' : `${measured.toPrecision(3)} ${unit}`,
    budget === null ? '' : `${budget.most ? 'at most' : 'at least'} ${budget.value} ${unit}`,
    ratio === null ? '' : `${ratio.toPrecision(3)} ×`,
    note,
  ]);
  const header = ['task', 'measured', 'budget', 'against ours', 'note'];
  return [header, header.map(() => '---'), ...cells].map((row) => `| ${row.join(' | ')} |\n`).join('');
}
