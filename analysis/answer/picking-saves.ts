import type { CitrusType } from '../tree/catalogue.ts';
import { hangsUntil, harvestWindow, PICKINGS } from '../tree/harvest.ts';
import { hemisphereOf } from '../winter/winter-year.ts';
import { marginsOf, readingAt, type GrownTrees, type LifePlace } from './life-place.ts';
import type { PickingSaves } from './year.ts';

const READING = 'night_by_night';

/**
 * What picking early saves for the tree, which then carries no load when the cold comes: trees living at ten years either way,
 * by the colder reading. `null` where some fruit hangs at all times, however it is picked.
 */
export function pickingSaves(place: LifePlace, type: CitrusType, grown: GrownTrees): PickingSaves | null {
  const hemisphere = hemisphereOf(place.subject.place.lat);
  const window = harvestWindow(type, grown.planting.calendar, hemisphere);
  if (hangsUntil(window, 'late') === hangsUntil(window, 'early')) return null;
  const [late, early] = PICKINGS.map((picking) => {
    const picked = { ...grown, planting: { ...grown.planting, picking } };
    const { followed, share } = readingAt(
      place,
      type,
      picked,
      marginsOf(place, type, picked),
      READING,
    ).ten_years;
    return followed === 0 ? null : share;
  });
  return { ten_years_late: late, ten_years_early: early };
}
