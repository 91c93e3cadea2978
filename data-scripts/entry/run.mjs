/** `run.mjs NAME ARGS…`: runs data-scripts/commands/NAME.ts (bench: tests/bench/main.ts) with these arguments. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

import { bundle } from './bundle.mjs';
import { ensureInstalled } from './install.mjs';
import { EntryError, ROOT, enter } from './project.mjs';

await enter(async () => {
  const [name, ...args] = process.argv.slice(2);
  const source = name === 'bench' ? 'tests/bench/main.ts' : `data-scripts/commands/${name}.ts`;
  if (!/^[a-z-]+$/.test(name ?? '') || !existsSync(join(ROOT, source))) {
    throw new EntryError(`There is no command "${name ?? ''}" in data-scripts/commands.`);
  }
  await ensureInstalled();
  const made = await bundle(source);
  process.setSourceMapsEnabled(true);
  process.argv = [process.execPath, made, ...args];
  await import(pathToFileURL(made).href);
});
