import { expect, test } from 'vitest';
import { DATE_CHANCES } from '../../../analysis/answer/year.ts';
import { yearTasks } from '../../../analysis/answer/year-tasks.ts';
import { findType } from '../../../analysis/tree/catalogue.ts';
import { fruitLoss } from '../../../analysis/tree/fruit-loss.ts';
import { harvestWindow } from '../../../analysis/tree/harvest.ts';
import { noSeasonDates } from '../../../analysis/winter/season-dates.ts';

/** Why the crop is to be in by a day, where so many of the winters lose it on a day in December. */
function pickByWhy(lost: number, winters: number): string | undefined {
  const type = findType('satsuma_owari')!;
  const window = harvestWindow(type, 'gulf', 'north');
  const first = Float64Array.from({ length: winters }, (_, w) => (w < lost ? window.toDay - 30 + w : NaN));
  const none = noSeasonDates(DATE_CHANCES);
  const tasks = yearTasks({
    type,
    calendar: 'gulf',
    hemisphere: 'north',
    window,
    loss: fruitLoss(first, type, window, 'north'),
    cool: none,
    freeze: none,
    hardFreeze: none,
    uncovered: none,
  });
  return tasks.find(({ id }) => id === 'pick-by')?.why;
}

test('what is fewer than 1 in 10 is not told as 10 %', () => {
  // 5 of 51 by the day told, the sixth is one too many.
  expect(pickByWhy(8, 51)).toMatch(
    /come in 9\.8 % of the winters, fewer than 1 in 10 \(90 % range 5 % to 19 %\)/,
  );
  expect(pickByWhy(8, 40)).toMatch(/come in 8 % of the winters/);
});
