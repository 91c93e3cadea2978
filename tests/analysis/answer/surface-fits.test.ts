import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { findSubject } from '../../../analysis/answer/find-subject.ts';
import { FitBook } from '../../../analysis/answer/fit-book.ts';
import {
  CELL_OUT_OF_REACH,
  CELL_SEA,
  CELL_TOLD,
  placeCells,
  type PlaceCells,
} from '../../../analysis/answer/place-cells.ts';
import { PlaceHistories, type WinterSource } from '../../../analysis/answer/place-histories.ts';
import { SurfaceFits } from '../../../analysis/answer/surface-fits.ts';
import { threeReadings } from '../../../analysis/answer/three-readings.ts';
import { countHits } from '../../../analysis/extremes/counted.ts';
import { RECENT_WINTERS } from '../../../analysis/extremes/trend.ts';
import { fitPlaceParameters } from '../../../analysis/place/fit-parameters.ts';
import { USUAL_PARAMETERS } from '../../../analysis/place/place-parameters.ts';
import type { Member } from '../../../analysis/place/station-network.ts';
import { cellCentre, type PlaceGrid } from '../../../analysis/records/grid.ts';
import { NO_GAINS, type Gains } from '../../../analysis/winter/winter-minima.ts';
import { InventedLand, levelsOf, wintersOf } from '../place/invented-land.ts';
import { inventedGrid, inventedSource } from './invented-source.ts';

const noPause = async (): Promise<void> => {};
const GAINS: readonly Gains[] = [NO_GAINS, { calmC: 2.5, windyC: 0.5 }, { calmC: -1.1, windyC: 3 }];

/** A grid about the middle of the land, one of whose cells is a station. */
function gridOver(land: InventedLand, columns = 5, rows = 4): PlaceGrid {
  const corner = land.site(-60, -50);
  return inventedGrid(
    { columns, rows, west: corner.lon, south: corner.lat, stepLonDeg: 0.3, stepLatDeg: 0.3 },
    (cell) => 40 * cell,
  );
}

/** Float32 holds seven digits; a chance below 1e-38 is none. */
function expectSame(period: number, wanted: number): void {
  if (wanted > 1e30) expect(period).toBeGreaterThan(1e30);
  else expect(period / wanted).toBeCloseTo(1, 6);
}

async function made(
  members: readonly Member[],
  grid: PlaceGrid,
  hours: number,
  place = fitPlaceParameters(members),
) {
  const source = inventedSource(members, { place, grid });
  const cells = await placeCells(new PlaceHistories(source), grid, hours, noPause);
  return { source, grid, cells };
}

/** The single point's book at the centre of each cell. */
async function books(source: WinterSource, grid: PlaceGrid, { cells }: PlaceCells, gains: Gains) {
  const histories = new PlaceHistories(source);
  return Promise.all(
    cells.map(async ({ cell }) => {
      const request = { by: 'point' as const, label: 'c', ...cellCentre(grid, cell), elevationM: null };
      const { subject } = await findSubject(source, request, histories);
      return { subject, book: new FitBook(subject, gains, 40) };
    }),
  );
}

describe('the surface', () => {
  const land = new InventedLand({ seed: 31, winters: 55, share: 0.8 });
  const grid = gridOver(land);
  const centre = cellCentre(grid, 7);
  const members = [
    ...land.members(land.scattered(14, 90, 500), (i, w) => w % 13 !== i),
    land.member('ON', { ...centre, elevationM: 280, coastKm: null }, 99),
  ];

  it.each([0, 4, 7, 24])('has the curve of a single point at each cell, %i hours', async (hours) => {
    const { source, cells } = await made(members, grid, hours);
    expect(cells.cells).toHaveLength(20);
    expect(cells.cells.filter(({ error }) => error === null).map(({ cell }) => cell)).toEqual([7]);
    for (const gains of GAINS) {
      const fits = new SurfaceFits(cells.cells, hours, gains, null);
      const single = await books(source, grid, cells, gains);
      const claims = fits.longestClaims();
      for (const limit of [-9.5, -6.1, -4, -2.22, 0, 3]) {
        fits.periods(limit).forEach((period, i) => {
          const { fit, valuesC } = single[i].book.forHours(hours);
          expect(fit!.hasCurve).toBe(true);
          expectSame(period, fit!.returnPeriod(limit).period);
          expect(claims[i]).toBe(2 * valuesC.length);
        });
      }
    }
  });

  it('of the last 30 winters has the readings of a single point', async () => {
    const { source, cells } = await made(members, grid, 4);
    const fits = new SurfaceFits(cells.cells, 4, NO_GAINS, RECENT_WINTERS);
    const single = await books(source, grid, cells, NO_GAINS);
    const limitC = -4;
    fits.periods(limitC).forEach((period, i) => {
      const { subject, book } = single[i];
      const { last30 } = threeReadings(subject, book, { hours: 4, limitC, draws: 20 });
      expect(last30!.winters).toBe(fits.longestClaims()[i] / 2);
      expect(last30!.headline.basis).toBe('fitted');
      expectSame(period, last30!.headline.period!);
    });
  });

  it('never hits a colder limit more often', async () => {
    const { cells } = await made(members, grid, 4);
    const fits = GAINS.map((gains) => new SurfaceFits(cells.cells, 4, gains, null));
    fc.assert(
      fc.property(
        fc.constantFrom(...fits),
        fc.double({ min: -25, max: 12, noNaN: true }),
        fc.double({ min: 0, max: 10, noNaN: true }),
        (fit, limit, warmer) => {
          const [cold, warm] = [fit.periods(limit), fit.periods(limit + warmer)];
          for (let i = 0; i < cold.length; i++) {
            expect(warm[i]).toBeLessThanOrEqual(cold[i] * 1.000001);
            expect(cold[i]).toBeGreaterThanOrEqual(0.999999);
          }
        },
      ),
      { numRuns: 60, seed: 4 },
    );
  });

  it('counts where there are fewer than 20 winters', async () => {
    const short = new InventedLand({ seed: 32, winters: 16, share: 0.8 });
    const shortGrid = gridOver(short);
    const { source, cells } = await made(short.members(short.scattered(9, 80, 300)), shortGrid, 4);
    const fits = new SurfaceFits(cells.cells, 4, NO_GAINS, null);
    const single = await books(source, shortGrid, cells, NO_GAINS);
    for (const limit of [-30, -4, -2, 1]) {
      fits.periods(limit).forEach((period, i) => {
        const { fit, valuesC } = single[i].book.forHours(4);
        expect(fit).toBeNull();
        expect(valuesC).toHaveLength(16);
        expect(period).toBeCloseTo(16 / countHits(valuesC, limit), 5);
      });
    }
    expect([...fits.periods(-30)].every((period) => period === Infinity)).toBe(true);
  });

  it('says never where no winter was cold, and the share of cold winters bounds it where few were', async () => {
    const mild = new InventedLand({ seed: 33, winters: 40, share: 0.8, middleC: 9 });
    const sites = mild.scattered(9, 80, 0);
    const frostFree = sites.map((site, i) => ({
      id: `W${i}`,
      site,
      winters: wintersOf(new Float64Array(40).fill(NaN)),
    }));
    const none = await made(frostFree, gridOver(mild), 4, USUAL_PARAMETERS);
    const never = new SurfaceFits(none.cells.cells, 4, NO_GAINS, null).periods(8);
    expect(none.cells.cells).toHaveLength(20);
    expect([...never]).toEqual(new Array(20).fill(Infinity));

    const seldom = sites.map((site, i) => ({
      id: `M${i}`,
      site,
      winters: wintersOf(mild.minimaC(site, i).map((x) => (x > 10 ? NaN : x))),
    }));
    const few = await made(seldom, gridOver(mild), 0);
    const fits = new SurfaceFits(few.cells.cells, 0, NO_GAINS, null);
    const single = await books(few.source, gridOver(mild), few.cells, NO_GAINS);
    fits.periods(6).forEach((period, i) => {
      const book = single[i].book.forHours(0);
      expect(book.valuesC.some(Number.isNaN)).toBe(true);
      expectSame(period, book.fit!.returnPeriod(6).period);
    });
  });
});

describe('the cells of a surface', () => {
  const land = new InventedLand({ seed: 34, winters: 30, share: 0.8 });
  let cells: PlaceCells;
  let grid: PlaceGrid;
  beforeAll(async () => {
    const corner = land.site(-60, -50);
    const wide = inventedGrid({
      columns: 6,
      rows: 3,
      west: corner.lon,
      south: corner.lat,
      stepLonDeg: 0.8,
      stepLatDeg: 0.3,
    });
    grid = { ...wide, land: wide.land.map((_, i) => (i % 5 === 2 ? 0 : 1)) };
    ({ cells } = await made(land.members(land.scattered(4, 50, 0)), grid, 4));
  });

  it('are sea, told about, or beyond the reach of the stations', () => {
    const told = new Set(cells.cells.map(({ cell }) => cell));
    cells.states.forEach((state, cell) => {
      if (cell % 5 === 2) expect(state).toBe(CELL_SEA);
      else expect(state).toBe(told.has(cell) ? CELL_TOLD : CELL_OUT_OF_REACH);
    });
    expect([...cells.states].filter((state) => state === CELL_OUT_OF_REACH).length).toBeGreaterThan(2);
    expect(told.size).toBeGreaterThan(5);
  });

  it('have the winters of a single point, to the last hundredth', async () => {
    const source = inventedSource(land.members(land.scattered(4, 50, 0)), { grid });
    for (const { cell, winters, error } of cells.cells) {
      const request = { by: 'point' as const, label: 'c', ...cellCentre(grid, cell), elevationM: null };
      const { subject } = await findSubject(source, request);
      expect(levelsOf(winters, 4)).toEqual(levelsOf(subject.winters, 4));
      expect(error).toEqual(subject.interpolation![4]);
    }
  });

  it('are beyond reach where the stations have too little in common with them, not without a period', async () => {
    const unlike = { ...USUAL_PARAMETERS, anomaly: { share: 0.2, rangeKm: 100 } };
    const members = land.members(land.scattered(4, 50, 0));
    const strange = await made(members, grid, 4, unlike);
    expect(strange.cells.cells).toHaveLength(0);
    expect(strange.cells.states.includes(CELL_TOLD)).toBe(false);
    const request = { by: 'point' as const, label: 'here', ...land.site(9, 9), elevationM: 0 };
    const { subject, stationId } = await findSubject(strange.source, request);
    expect(stationId).not.toBeNull();
    expect(subject.notes.join(' ')).toContain('have too little in common with it');
  });

  it('let other work in between, and are whole all the same', async () => {
    let pauses = 0;
    const source = inventedSource(land.members(land.scattered(4, 50, 0)), { grid });
    const again = await placeCells(new PlaceHistories(source), grid, 4, async () => pauses++);
    expect(pauses).toBeGreaterThan(0);
    expect(again.states).toEqual(cells.states);
  });
});
