/** How ground and buildings are drawn in ink; one tile of each. */
export type PatternName = 'hatch' | 'paving' | 'water' | 'bare' | 'mulch' | 'tall-grass' | 'leaves' | 'doubt';

const SIZES: Readonly<Record<PatternName, number>> = {
  hatch: 6,
  paving: 9,
  water: 12,
  bare: 10,
  mulch: 11,
  'tall-grass': 11,
  leaves: 9,
  doubt: 5,
};

type Pen = CanvasRenderingContext2D;

function strokes(pen: Pen, lines: readonly (readonly [number, number, number, number])[]): void {
  pen.beginPath();
  for (const [x1, y1, x2, y2] of lines) {
    pen.moveTo(x1, y1);
    pen.lineTo(x2, y2);
  }
  pen.stroke();
}

function dots(pen: Pen, points: readonly (readonly [number, number])[], radius: number): void {
  pen.beginPath();
  for (const [x, y] of points) {
    pen.moveTo(x + radius, y);
    pen.arc(x, y, radius, 0, 2 * Math.PI);
  }
  pen.fill();
}

const DRAWN: Readonly<Record<PatternName, (pen: Pen, size: number) => void>> = {
  hatch: (pen, s) =>
    strokes(pen, [
      [-1, s + 1, s + 1, -1],
      [-1, 1, 1, -1],
      [s - 1, s + 1, s + 1, s - 1],
    ]),
  paving: (pen, s) =>
    strokes(pen, [
      [0, 0.5, s, 0.5],
      [0.5, 0, 0.5, s],
    ]),
  water: (pen, s) => {
    pen.beginPath();
    pen.moveTo(1, s / 4);
    pen.quadraticCurveTo(s / 4, s / 4 - 2.5, s / 2, s / 4);
    pen.moveTo(s / 2 + 1, (3 * s) / 4);
    pen.quadraticCurveTo((3 * s) / 4, (3 * s) / 4 - 2.5, s, (3 * s) / 4);
    pen.stroke();
  },
  bare: (pen, s) =>
    dots(
      pen,
      [
        [s / 4, s / 4],
        [(3 * s) / 4, (3 * s) / 4],
      ],
      0.8,
    ),
  mulch: (pen, s) =>
    strokes(pen, [
      [1, 3, 4, 2],
      [6, 8, 9, 9.5],
      [s - 3, 2, s - 1, 4],
    ]),
  'tall-grass': (pen) =>
    strokes(pen, [
      [3, 6, 2, 2],
      [3, 6, 4.5, 2.5],
      [8, 10.5, 7, 6.5],
      [8, 10.5, 9.5, 7],
    ]),
  leaves: (pen, s) =>
    dots(
      pen,
      [
        [s / 4, s / 4],
        [(3 * s) / 4, (3 * s) / 4],
      ],
      1.15,
    ),
  doubt: (pen, s) =>
    strokes(pen, [
      [-1, -1, s + 1, s + 1],
      [-1, s - 1, 1, s + 1],
      [s - 1, -1, s + 1, 1],
    ]),
};

/** A tile to fill with; `ratio` is canvas px for one px on screen. */
function patternTile(name: PatternName, colour: string, ratio: number): HTMLCanvasElement {
  const size = SIZES[name];
  const tile = document.createElement('canvas');
  tile.width = tile.height = Math.round(size * ratio);
  const pen = tile.getContext('2d')!;
  pen.scale(tile.width / size, tile.width / size);
  pen.strokeStyle = pen.fillStyle = colour;
  pen.lineWidth = name === 'doubt' ? 0.7 : 0.8;
  DRAWN[name](pen, size);
  return tile;
}

/** Tiles made once a palette. */
export class PatternBook {
  readonly #tiles = new Map<string, HTMLCanvasElement>();

  /** @param ratio px of the tile for one of the pattern */
  tile(name: PatternName, colour: string, ratio = 2): HTMLCanvasElement {
    const key = `${name} ${colour} ${ratio}`;
    let tile = this.#tiles.get(key);
    if (!tile) this.#tiles.set(key, (tile = patternTile(name, colour, ratio)));
    return tile;
  }
}
