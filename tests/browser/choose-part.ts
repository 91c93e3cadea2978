import { inject } from 'vitest';

import { choose } from '../../analysis/answer/choose.ts';
import type { Chosen, Way, Wishes } from '../../analysis/answer/choosing.ts';
import { findSubject } from '../../analysis/answer/find-subject.ts';
import { lifePlace } from '../../analysis/answer/life-place.ts';
import { offersAt } from '../../analysis/answer/offers.ts';
import { PlaceHistories } from '../../analysis/answer/place-histories.ts';
import { standingSpot } from '../../analysis/answer/standing-spot.ts';
import { CITRUS_TYPES } from '../../analysis/tree/catalogue.ts';
import { MATURE_TREE } from '../../analysis/tree/penalties.ts';
import { PackDatabase } from '../../data-scripts/pack/database.ts';
import { Pack } from '../../data-scripts/pack/open-pack.ts';
import { readNights } from '../../data-scripts/pack/place-nights.ts';
import { firstTown } from './command-answer.ts';

const PLANTING = { startAgeYears: 1, picking: 'late', calendar: 'gulf' } as const;
const HEMISPHERE = 'north';

/** What is chosen for wishes at the place the page opens with, worked out in Node; `onPage` is what stands there already. */
export async function chosenInNode(): Promise<(wishes: Wishes, onPage?: Way) => Chosen> {
  const pack = await Pack.open(`${inject('packsFolder')}/sallowmere`);
  const { name, lat, lon } = await firstTown();
  const request = { by: 'point' as const, label: name, lat, lon, elevationM: null };
  const { subject, ...found } = await findSubject(pack, request, new PlaceHistories(pack));
  const database = await PackDatabase.open(await pack.databaseFile());
  try {
    const place = lifePlace(subject, await readNights(database, found), PLANTING);
    return (wishes, { spotId, covers } = { spotId: null, covers: [] }) => {
      const spot = standingSpot({
        spot: spotId,
        yard: null,
        measured: null,
        cover: null,
        hemisphere: HEMISPHERE,
        container: false,
      });
      const page = { spotId, covers, container: false };
      const offers = offersAt(place, { tree: MATURE_TREE, planting: PLANTING, spot });
      return choose({ types: CITRUS_TYPES, wishes, page, hemisphere: HEMISPHERE }, offers);
    };
  } finally {
    database.close();
  }
}
