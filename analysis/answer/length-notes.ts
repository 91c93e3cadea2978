import type { RecordLength } from '../extremes/headline.ts';
import { t } from '../language/t.ts';

/** What must be said beside an answer from so many complete winters; nothing where they are enough. */
export function lengthNotes(winters: number, length: RecordLength): readonly string[] {
  switch (length) {
    case 'counts only':
      return [t`Only ${winters} complete winters: counts alone, no fitted curve (it needs 20).`];
    case 'short':
      return [t`Only ${winters} complete winters: read every range as wide (30 make a sound record).`];
    case 'enough':
      return [];
  }
}
