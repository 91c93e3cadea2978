import { writeFileSync } from 'node:fs';
import { join } from 'node:path';

import { InputError } from '../../analysis/records/input-error.ts';
import { correctionFile, measureAccuracy, minimaOnlyFile, sampleAll } from './accuracy.ts';
import { readAirports } from './read-airports.ts';

const USAGE = 'usage: calibrate HOURLY_FOLDER OUT_FOLDER (OUT_FOLDER is analysis/night)';

/** Fits the correction of sustained cold on the hourly airports and writes its constants and measured errors. */
async function calibrate(folder: string, out: string): Promise<void> {
  const records = await readAirports(folder);
  const nights = sampleAll(records);
  const accuracy = measureAccuracy(nights);
  const constants = correctionFile(nights, records, accuracy);
  writeFileSync(join(out, 'sustained-correction.json'), `${JSON.stringify(constants)}\n`);
  writeFileSync(join(out, 'minima-only.json'), `${JSON.stringify(minimaOnlyFile(nights, accuracy))}\n`);
  writeFileSync(join(out, 'night-accuracy.json'), `${JSON.stringify(accuracy)}\n`);
  const { maeF, biasF, nights: judged } = accuracy.frostNights;
  const hidden = accuracy.frostNightsMinimaOnly;
  console.log(
    `${nights.length} nights of ${records.length} airports, ${judged} with frost; left-out errors in °F:`,
  );
  console.log(`S_h      ${Object.keys(maeF).join('\t')}`);
  console.log(`absolute ${Object.values(maeF).join('\t')}`);
  console.log(`mean     ${Object.values(biasF).join('\t')}`);
  console.log('with the maxima hidden:');
  console.log(`absolute ${Object.values(hidden.maeF).join('\t')}`);
  console.log(`mean     ${Object.values(hidden.biasF).join('\t')}`);
}

const [folder, out] = process.argv.slice(2);
if (folder === undefined || out === undefined) {
  console.error(USAGE);
  process.exitCode = 2;
} else {
  await calibrate(folder, out).catch((error: unknown) => {
    if (!(error instanceof InputError)) throw error;
    console.error(error.message);
    process.exitCode = 1;
  });
}
