import { assess } from '../../analysis/answer/assess.ts';
import { assessmentJson } from '../../analysis/answer/assessment-json.ts';
import { findSubject, type PlaceRequest } from '../../analysis/answer/find-subject.ts';
import { strictProtection } from '../../analysis/answer/protection.ts';
import { answerBatchPlaces, isBatchThread } from '../batch/batch-thread.ts';
import { PackDatabase } from '../pack/database.ts';
import { Pack } from '../pack/open-pack.ts';
import { readNights } from '../pack/place-nights.ts';
import { assessBatch } from './assess-batch.ts';
import { ASSESS_HELP, readAssessOptions, type AssessRequest } from './assess-options.ts';
import { assessCsv, assessText } from './assess-text.ts';
import { countHitNights, countPlaceHitNights } from './hit-nights.ts';
import { lifeAndYear, moreLines } from './life-and-year.ts';
import { protectionTexts } from './protection-texts.ts';
import { print, runCommand } from './run-command.ts';

// A batch runs this bundle once more for each of its threads.
if (isBatchThread()) answerBatchPlaces();
else await runCommand('assess', main);

async function main(): Promise<void> {
  const request = readAssessOptions(process.argv.slice(2));
  if (!request) return print(ASSESS_HELP);
  const { place } = request;
  if (place.by === 'batch') return assessBatch(request, place.file, place.threads);
  const pack = await Pack.open(request.pack);
  const { subject, stationId, nightPlan: plan } = await findSubject(pack, placeOf(pack, place));
  const texts = await protectionTexts(request, subject.place.lat);
  const protection = strictProtection(texts);
  const { gains, words: standing, notes } = protection;
  const database = await PackDatabase.open(await pack.databaseFile());
  try {
    const { types, levels, tree, years } = request;
    const question = { types, levels, tree, gains };
    const hitNights = plan
      ? await countPlaceHitNights(database, plan)
      : stationId === null
        ? undefined
        : await countHitNights(database, stationId, question);
    const answer = assess(subject, { ...question, years, hitNights, standing, notes });
    const more = await lifeAndYear(request, protection, subject, () =>
      readNights(database, { stationId, nightPlan: plan }),
    );
    if (request.format === 'json') await print(`${JSON.stringify({ ...assessmentJson(answer), ...more })}\n`);
    else if (request.format === 'csv') await print(assessCsv(answer));
    else await print(assessText(answer, pack.manifest.invented, moreLines(more)));
  } finally {
    database.close();
  }
}

type SinglePlace = Exclude<AssessRequest['place'], { readonly by: 'batch' }>;

function placeOf(pack: Pack, place: SinglePlace): PlaceRequest {
  switch (place.by) {
    case 'station':
      return place;
    case 'point':
      return { ...place, label: `${place.lat}, ${place.lon}` };
    case 'postcode': {
      const { code, name, lat, lon } = pack.postcode(place.code);
      return { by: 'point', label: `${code} ${name}`, lat, lon, elevationM: null };
    }
  }
}
