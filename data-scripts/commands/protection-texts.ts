import { readFile } from 'node:fs/promises';
import path from 'node:path';

import type { ProtectionTexts } from '../../analysis/answer/protection.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import { readYardFile } from '../../analysis/spot/yard-file.ts';
import { writeYardText } from '../../analysis/spot/yard-text.ts';
import type { AssessRequest } from './assess-options.ts';

/** Spot and cover of a command line as the page's address would have them. @throws InputError for a bad yard or spot */
export async function protectionTexts(
  { spot, yard, measured, cover, tree }: AssessRequest,
  latDeg: number,
): Promise<ProtectionTexts> {
  const drawn = yard === null || spot === null ? { spot, yard: null } : await inYard(yard, spot);
  return {
    ...drawn,
    measured,
    cover,
    hemisphere: latDeg < 0 ? 'south' : 'north',
    container: tree.container,
  };
}

async function inYard(file: string, name: string): Promise<Pick<ProtectionTexts, 'spot' | 'yard'>> {
  const yard = readYardFile(await readFile(file, 'utf8'), path.basename(file));
  const spot = yard.spots.find((marked) => marked.name === name);
  if (!spot) {
    const marked = yard.spots.map((entry) => `"${entry.name}"`).join(', ') || 'none';
    throw new InputError(`--spot "${name}" is not marked in ${path.basename(file)}; its spots: ${marked}`);
  }
  return { spot: `yard:${spot.at.join(',')}`, yard: writeYardText(yard) };
}
