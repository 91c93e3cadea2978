import { ADDRESSES } from './addresses.ts';
import { ARCHIVES } from './archives.ts';
import { EXPORTS } from './exports.ts';
import { KEPT } from './kept.ts';
import { PACKS } from './packs.ts';
import { QUESTIONS } from './questions.ts';
import type { ReaderProperty } from './reader-property.ts';
import { STATION_FILES } from './station-files.ts';
import { TABLES } from './tables.ts';
import { YARDS } from './yards.ts';

/** What must hold of every reader of something that people bring, and of every text that goes out as a table. */
export const ALL_READERS: readonly ReaderProperty[] = [
  ...STATION_FILES,
  ...TABLES,
  ...YARDS,
  ...ADDRESSES,
  ...PACKS,
  ...ARCHIVES,
  ...KEPT,
  ...EXPORTS,
  ...QUESTIONS,
];
