/**
 * Runs commands of the project one after another in one process: a message `{ name, args }` is answered by
 * `{ code, out, err }`, as a process of its own would have ended.
 */
import { pathToFileURL } from 'node:url';

import { bundle } from '../../../data-scripts/entry/bundle.mjs';

let runs = 0;
const said = { out: '', err: '' };
const reallyWrite = { stdout: process.stdout.write, stderr: process.stderr.write };

function listen(stream, key) {
  process[stream].write = (chunk, encoding, done) => {
    said[key] += chunk.toString();
    const called = typeof encoding === 'function' ? encoding : done;
    if (called) setImmediate(called);
    return true;
  };
}

async function run({ name, args }) {
  [said.out, said.err] = ['', ''];
  process.exitCode = undefined;
  const made = await bundle(`data-scripts/commands/${name}.ts`);
  process.argv = [process.execPath, made, ...args];
  listen('stdout', 'out');
  listen('stderr', 'err');
  try {
    // A module of another address is run anew; the packages it shares are there already.
    await import(`${pathToFileURL(made).href}?run=${++runs}`);
  } catch (error) {
    said.err += `${error.stack}\n`;
    process.exitCode = 1;
  } finally {
    process.stdout.write = reallyWrite.stdout;
    process.stderr.write = reallyWrite.stderr;
    process.stdout.removeAllListeners('error');
  }
  return { code: process.exitCode ?? 0, ...said };
}

let last = Promise.resolve();
process.on('message', (asked) => {
  last = last.then(async () => process.send({ id: asked.id, ...(await run(asked)) }));
});
