import { CORNERS_MAX, type Corner } from './chosen.ts';

/** Fewer corners enclose nothing. */
export const CORNERS_MIN = 3;
/** Corners are kept to four digits, about 11 m, as the address has them. */
function inSteps(degrees: number): number {
  return Number(degrees.toFixed(4));
}

/** An area on the way: its corners as they are set, one after the other. */
export class AreaDraft {
  #corners = $state.raw<readonly Corner[] | null>(null);

  /** `null` while nothing is being drawn. */
  get corners(): readonly Corner[] | null {
    return this.#corners;
  }
  get canEnd(): boolean {
    return (this.#corners?.length ?? 0) >= CORNERS_MIN;
  }

  begin(): void {
    this.#corners = [];
  }

  /** One more corner; the same again and more than fit are passed over. */
  add(point: Corner): void {
    const corners = this.#corners;
    const [lat, lon] = [inSteps(point.lat), inSteps(point.lon)];
    if (!corners || corners.length >= CORNERS_MAX) return;
    const last = corners.at(-1);
    if (last && last.lat === lat && last.lon === lon) return;
    this.#corners = [...corners, { lat, lon }];
  }

  undo(): void {
    if (this.#corners) this.#corners = this.#corners.slice(0, -1);
  }

  cancel(): void {
    this.#corners = null;
  }

  /** The finished area; `null`, and drawing goes on, while it has too few corners. */
  end(): readonly Corner[] | null {
    if (!this.canEnd) return null;
    const corners = this.#corners;
    this.#corners = null;
    return corners;
  }
}
