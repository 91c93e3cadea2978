import { spawn } from 'node:child_process';

import { ROOT } from './project.mjs';

/** Ways to end what runs now: an interrupt ends all of it. */
const running = new Set();

/**
 * Runs a program in the project's folder and waits for its end. Results `{code, output, timedOut}`: `code` is null when a signal
 * ended it or it could not be started; `output` is kept only with `capture`, else it goes where this script's goes
 * (`stdout: 'stderr'` sends both to stderr, for scripts whose own stdout is an answer).
 *
 * The child leads its own process group, so that a time limit or an interrupt ends its workers too.
 */
export function runChild(program, args, { capture = false, stdout = 'inherit', env = {}, limitS } = {}) {
  return new Promise((settle) => {
    const to = capture ? 'pipe' : stdout === 'stderr' ? 2 : 'inherit';
    const child = spawn(program, args, {
      cwd: ROOT,
      stdio: ['ignore', to, capture ? 'pipe' : 'inherit'],
      env: { ...process.env, ...env },
      detached: process.platform !== 'win32',
    });
    let output = '';
    let timedOut = false;
    child.stdout?.on('data', (chunk) => (output += chunk));
    child.stderr?.on('data', (chunk) => (output += chunk));

    const end = (signal) => {
      try {
        process.kill(process.platform === 'win32' ? child.pid : -child.pid, signal);
      } catch {
        // It has ended by itself.
      }
    };
    running.add(end);
    const interrupt = (signal) => {
      running.forEach((endOne) => endOne(signal));
      process.exit(128 + (signal === 'SIGINT' ? 2 : 15));
    };
    const timers = limitS
      ? [
          setTimeout(() => ((timedOut = true), end('SIGTERM')), limitS * 1000),
          setTimeout(() => end('SIGKILL'), limitS * 1000 + 5000),
        ]
      : [];
    process.once('SIGINT', interrupt).once('SIGTERM', interrupt);

    const settled = (code) => {
      timers.forEach(clearTimeout);
      running.delete(end);
      process.off('SIGINT', interrupt).off('SIGTERM', interrupt);
      settle({ code, output, timedOut });
    };
    child.once('error', (error) => {
      output += error.message;
      settled(null);
    });
    child.once('close', settled);
  });
}

/** Runs a program that `npm ci` installed, by the name of its command. */
export function runTool(name, args, options) {
  return runChild(process.execPath, [toolPath(name), ...args], options);
}

const TOOLS = {
  eslint: 'eslint/bin/eslint.js',
  prettier: 'prettier/bin/prettier.cjs',
  tsc: 'typescript/bin/tsc',
  'svelte-check': 'svelte-check/bin/svelte-check',
  vite: 'vite/bin/vite.js',
  vitest: 'vitest/vitest.mjs',
};

function toolPath(name) {
  return `${ROOT}/node_modules/${TOOLS[name]}`;
}
