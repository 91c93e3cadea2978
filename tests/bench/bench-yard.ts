import { bestSpots } from '../../analysis/spot/best-spots.ts';
import { offsetField } from '../../analysis/spot/offset-field.ts';
import { FULL_YARD } from '../analysis/spot/drawn-yard.ts';
import { medianMs, type BenchRow } from './bench-row.ts';

/** A drawn yard to its field of offsets, and its best spots. */
export async function benchYard(): Promise<BenchRow[]> {
  const { widthM, depthM, things } = FULL_YARD;
  const fieldMs = await medianMs(() => offsetField(FULL_YARD, 31), 15);
  const dragMs = await medianMs(() => offsetField(FULL_YARD, 31, 1), 15);
  const spotsMs = await medianMs(() => bestSpots(FULL_YARD, 31, { grownWidthM: 3, count: 3 }), 5);
  const yard = `${widthM} x ${depthM} m, ${things.length} things`;
  const row = { unit: 'ms', ratio: null };
  return [
    {
      ...row,
      task: `offset field of a yard of ${yard}, every half metre`,
      measured: fieldMs,
      budget: { value: 100, most: true },
      note: 'calm and windy nights with their ranges, one thread',
    },
    { ...row, task: 'the same every metre', measured: dragMs, budget: null, note: '' },
    {
      ...row,
      task: 'its three best spots with hours of winter sun',
      measured: spotsMs,
      budget: null,
      note: 'after the field, which is shown first',
    },
  ];
}
