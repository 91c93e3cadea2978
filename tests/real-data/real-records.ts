import { existsSync } from 'node:fs';
import path from 'node:path';

/** Folder of real public station records, kept outside the repository; `REAL_DATA` names another place. */
export const REAL_DATA = process.env.REAL_DATA ?? path.join(process.cwd(), '..', 'shared', 'real-data');

/** Whether the real records are at hand; says why not, once, when they aren't. */
export const haveRealData = existsSync(path.join(REAL_DATA, 'stations.csv'));
if (!haveRealData) {
  console.log(
    `Skipping checks on real records: ${REAL_DATA} isn't there (set REAL_DATA to a folder with them).`,
  );
}
