import { t } from '../../analysis/language/t.ts';
import { formatChance } from '../format/numbers.ts';
import type { Surface } from '../state/ports.ts';
import { BEYOND, PERIOD_SCALE, RATIO_SCALE, WHERE_SCALE, type PaintClass } from './paint-classes.ts';
import { classOf, type SurfaceNames } from './read-cell.ts';
import { landShares, type SurfaceView } from './surface-view.ts';

/** What stands beside a surface. */
export interface SurfaceLegendWords {
  /** What is asked, after the title: `about one winter in how many`. */
  readonly asks: string;
  /** Classes in the order of a legend; land without an answer goes beside them, as there is always some around the cells. */
  readonly classes: readonly PaintClass[];
  /** One sentence with the figure that the map sums up to; empty where there is none. */
  readonly result: string;
}

/** The legend of what is shown. Classes of a scale are all told, so that colours keep their meaning; others where they occur. */
export function legendOf(view: SurfaceView, names: SurfaceNames): SurfaceLegendWords {
  const found = new Set<string>();
  for (let cell = 0; cell < view.surface.states.length; cell++)
    if (view.surface.states[cell] !== 0) found.add(classOf(view, cell).id);
  const beyond = found.has('beyond');
  if (view.mode === 'periods') {
    const rareFirst = [...PERIOD_SCALE.classes].reverse();
    const label = t`rarer than the record can tell (1 in ${claimWords(view.surface)})`;
    const classes = beyond ? [{ ...BEYOND.periods, label }, ...rareFirst] : rareFirst;
    return { asks: t`about one winter in how many`, classes, result: '' };
  }
  if (view.mode === 'where') {
    const { reached, unknown } = landShares(view.surface, view.atLeastWinters);
    const [not, yes] = WHERE_SCALE.classes;
    return {
      asks: t`where a winter that kills it comes about 1 time in ${view.atLeastWinters} or more rarely`,
      classes: [
        { ...yes, label: t`1 in ${view.atLeastWinters} or rarer` },
        { ...not, label: t`more often than 1 in ${view.atLeastWinters}` },
        ...(beyond ? [BEYOND.where] : []),
      ],
      result:
        unknown > 0
          ? t`${formatChance(reached)} of the land; of ${formatChance(unknown)} nothing can be said.`
          : t`${formatChance(reached)} of the land.`,
    };
  }
  return {
    asks: t`${names.against}, how many times as often`,
    classes: [...RATIO_SCALE.classes, ...(beyond ? [BEYOND.difference] : [])],
    result: '',
  };
}

/** The longest periods told, `118` or `118 to 138`. */
function claimWords({ longestClaims, states }: Surface): string {
  let [least, most] = [Infinity, 0];
  for (let cell = 0; cell < states.length; cell++) {
    if (states[cell] !== 1) continue;
    least = Math.min(least, longestClaims[cell]);
    most = Math.max(most, longestClaims[cell]);
  }
  const [a, b] = [Math.round(least), Math.round(most)];
  return a === b ? String(a) : t`${a} to ${b}`;
}
