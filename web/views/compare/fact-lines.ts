import type { LevelAnswer } from '../../../analysis/answer/assessment.ts';
import { t } from '../../../analysis/language/t.ts';
import { countWords } from '../../format/answer-words.ts';
import { formatWinter } from '../../format/dates.ts';
import { errorWords, isEstimated } from '../../format/estimated.ts';
import { formatMonthDay } from '../../format/month-day.ts';
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
  const held = formatHours(hours);
  return [
    line(t`Height`, ({ elevationM }) =>
      elevationM === null ? t`not known` : formatElevation(elevationM, unit),
    ),
    line(t`From the sea`, ({ coastKm }) => (coastKm === null ? t`not known` : formatDistance(coastKm, unit))),
    line(t`Against the first`, (place, _) =>
      place === places[0] ? '–' : groundWords(place, places[0], unit) || t`about the same`,
    ),
    line(t`Winters`, ({ ranking }) =>
      recordWords(
        { complete: ranking.winters.used, first: ranking.winters.first, last: ranking.winters.last },
        hemisphere,
        isEstimated(ranking),
      ),
    ),
    line(t`Level good to about`, ({ ranking }) =>
      isEstimated(ranking) ? errorWords(ranking.place.error_c ?? 0, unit) : t`measured there`,
    ),
    line(t`Winters hit`, ({ ranking }, level) => countWords(level, isEstimated(ranking))),
    line(t`Their coldest nights`, ({ nights }, level) => {
      const dates = hitDates(nights, level, hemisphere);
      if (!dates) return t`no winter hit`;
      const [first, last] = [dates.first, dates.last].map((date) => formatMonthDay(date.slice(5)));
      return first === last ? first : t`${first} to ${last}`;
    }),
    line(hours === 0 ? t`Middle winter’s minimum` : t`Middle winter’s ${held} level`, ({ ranking }) =>
      formatTemperature(winterLevels(ranking, hours)?.middleC ?? null, unit, 1),
    ),
    line(hours === 0 ? t`Coldest winter’s minimum` : t`Coldest winter’s ${held} level`, ({ ranking }) => {
      const found = winterLevels(ranking, hours);
      if (!found) return '–';
      return `${formatTemperature(found.coldestC, unit, 1)}, ${formatWinter(found.winter, hemisphere)}`;
    }),
  ];
}
