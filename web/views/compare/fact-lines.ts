import type { LevelAnswer } from '../../../analysis/answer/assessment.ts';
import { countWords } from '../../format/answer-words.ts';
import { formatDay, formatWinter } from '../../format/dates.ts';
import { countedNoun, errorWords, isEstimated } from '../../format/estimated.ts';
import { formatDistance, formatElevation, formatHours } from '../../format/numbers.ts';
import { formatTemperature } from '../../format/temperatures.ts';
import type { TemperatureUnit } from '../../format/unit.ts';
import { recordWords } from '../../format/record-words.ts';
import { hitDates, winterLevels, type Compared } from './compared.ts';
import { groundWords } from './terrain-words.ts';

/** A line of the table: what it tells, and its cell for each place. */
export interface FactLine {
  readonly label: string;
  readonly cells: readonly string[];
}

interface Context {
  readonly unit: TemperatureUnit;
  readonly hemisphere: 'north' | 'south';
}

/** `3 Dec` of `3 Dec 1962`. */
function dayOnly(date: string): string {
  return formatDay(date, 'short').replace(/ \d{4}$/, '');
}

/** What the places are, how well they are known and what their winters did, line by line. */
export function factLines(
  places: readonly Compared[],
  levels: readonly LevelAnswer[],
  { unit, hemisphere }: Context,
): readonly FactLine[] {
  const line = (label: string, cell: (place: Compared, level: LevelAnswer) => string): FactLine => ({
    label,
    cells: places.map((place, i) => cell(place, levels[i])),
  });
  const hours = levels[0]?.hours ?? 0;
  const held = hours === 0 ? 'minimum' : `${formatHours(hours)} level`;
  return [
    line('Height', ({ elevationM }) =>
      elevationM === null ? 'not known' : formatElevation(elevationM, unit),
    ),
    line('From the sea', ({ coastKm }) => (coastKm === null ? 'not known' : formatDistance(coastKm, unit))),
    line('Against the first', (place, _) =>
      place === places[0] ? '–' : groundWords(place, places[0], unit) || 'about the same',
    ),
    line('Winters', ({ ranking }) =>
      recordWords(
        { complete: ranking.winters.used, first: ranking.winters.first, last: ranking.winters.last },
        hemisphere,
        countedNoun(isEstimated(ranking)),
      ),
    ),
    line('Level good to about', ({ ranking }) =>
      isEstimated(ranking) ? errorWords(ranking.place.error_c ?? 0, unit) : 'measured there',
    ),
    line('Winters hit', ({ ranking }, level) => countWords(level, isEstimated(ranking))),
    line('Their coldest nights', ({ nights }, level) => {
      const dates = hitDates(nights, level, hemisphere);
      if (!dates) return 'no winter hit';
      const [first, last] = [dayOnly(dates.first), dayOnly(dates.last)];
      return first === last ? first : `${first} to ${last}`;
    }),
    line(`Middle winter’s ${held}`, ({ ranking }) =>
      formatTemperature(winterLevels(ranking, hours)?.middleC ?? null, unit, 1),
    ),
    line(`Coldest winter’s ${held}`, ({ ranking }) => {
      const found = winterLevels(ranking, hours);
      if (!found) return '–';
      return `${formatTemperature(found.coldestC, unit, 1)}, ${formatWinter(found.winter, hemisphere)}`;
    }),
  ];
}
