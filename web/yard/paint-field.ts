import type { OffsetField } from '../../analysis/spot/offset-field.ts';
import { colourTable, type FieldColours } from './field-colours.ts';

/** The night whose offsets are shown. */
export type FieldNight = 'calm' | 'windy';

/** Half ranges below this are no doubt worth showing, °C. */
const LEAST_DOUBT_C = 0.15;

/** Is the range of a cell wider than what it says? */
export function isDoubtful(offsetC: number, halfRangeC: number): boolean {
  return halfRangeC >= LEAST_DOUBT_C && halfRangeC > Math.abs(offsetC);
}

/** Offsets and half ranges of one kind of night. */
export function nightOf(
  field: OffsetField,
  night: FieldNight,
): { offsetC: Float32Array; halfRangeC: Float32Array } {
  return night === 'calm'
    ? { offsetC: field.calmC, halfRangeC: field.calmHalfRangeC }
    : { offsetC: field.windyC, halfRangeC: field.windyHalfRangeC };
}

/** The field's values with blocked cells filled from around, ring by ring, so that the colour runs up to a wall and under water. */
export function filledValues({ columns, rows, blocked }: OffsetField, values: Float32Array): Float32Array {
  const filled = Float32Array.from(values);
  const known = Uint8Array.from(blocked, (entry) => (entry === 0 ? 1 : 0));
  let left = Array.from(blocked.keys()).filter((cell) => known[cell] === 0);
  while (left.length > 0) {
    const ring: number[] = [];
    const inside: number[] = [];
    for (const cell of left) {
      const [column, row] = [cell % columns, Math.floor(cell / columns)];
      let [sum, count] = [0, 0];
      for (let y = Math.max(0, row - 1); y <= Math.min(rows - 1, row + 1); y++) {
        for (let x = Math.max(0, column - 1); x <= Math.min(columns - 1, column + 1); x++) {
          const near = y * columns + x;
          if (known[near] === 0) continue;
          sum += filled[near];
          count++;
        }
      }
      if (count === 0) inside.push(cell);
      else {
        filled[cell] = sum / count;
        ring.push(cell);
      }
    }
    if (ring.length === 0) return filled;
    for (const cell of ring) known[cell] = 1;
    left = inside;
  }
  return filled;
}

/** Fills RGBA bytes by a cell's value, a pixel a cell, north up. */
export function paintOffsets(
  { columns, rows }: Pick<OffsetField, 'columns' | 'rows'>,
  values: Float32Array,
  colours: FieldColours,
  rgba: Uint8ClampedArray,
): void {
  const colourOf = colourTable(colours);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const at = ((rows - 1 - row) * columns + column) * 4;
      const colour = colourOf(values[row * columns + column]);
      rgba[at] = colour[0];
      rgba[at + 1] = colour[1];
      rgba[at + 2] = colour[2];
      rgba[at + 3] = 255;
    }
  }
}

/** Fills RGBA bytes with a mask of the doubtful cells: opaque where doubtful. @returns how many there are */
export function paintDoubt(field: OffsetField, night: FieldNight, rgba: Uint8ClampedArray): number {
  const { columns, rows, blocked } = field;
  const { offsetC, halfRangeC } = nightOf(field, night);
  let count = 0;
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const cell = row * columns + column;
      const doubtful = blocked[cell] === 0 && isDoubtful(offsetC[cell], halfRangeC[cell]);
      if (doubtful) count++;
      rgba[((rows - 1 - row) * columns + column) * 4 + 3] = doubtful ? 255 : 0;
    }
  }
  return count;
}

/** Offset and half range at a point of the plan by its cell; `null` off the plot or inside a building. */
export function cellAt(
  field: OffsetField,
  night: FieldNight,
  [eastM, northM]: readonly [number, number],
): { readonly offsetC: number; readonly halfRangeC: number } | null {
  const { columns, rows, stepM, blocked } = field;
  const [column, row] = [Math.floor(eastM / stepM), Math.floor(northM / stepM)];
  if (column < 0 || row < 0 || column >= columns || row >= rows) return null;
  const cell = row * columns + column;
  if (blocked[cell] !== 0) return null;
  const { offsetC, halfRangeC } = nightOf(field, night);
  return { offsetC: offsetC[cell], halfRangeC: halfRangeC[cell] };
}
