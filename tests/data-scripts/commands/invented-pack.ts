import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect } from 'vitest';
import { writeInventedFiles } from '../build/invented-files.ts';
import { command } from './command.ts';

/**
 * Builds a pack from invented files by the command, as a reader would.
 * @returns the pack's folder, and the folder of its own around it, which the caller removes
 */
export async function buildInventedPack(): Promise<{ work: string; pack: string }> {
  const work = await mkdtemp(path.join(tmpdir(), 'citrus-winters-test-'));
  const pack = path.join(work, 'pack');
  const { files, stations, places } = await writeInventedFiles(path.join(work, 'raw'));
  const named = ['--unit', 'C', '--stations', stations, '--places', places];
  const built = await command('records', 'build', '--out', pack, ...named, ...files);
  expect(built.err).toContain('is ready');
  expect(built).toMatchObject({ code: 0, out: '' });
  return { work, pack };
}
