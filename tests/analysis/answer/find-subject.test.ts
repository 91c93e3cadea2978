import { describe, expect, it } from 'vitest';
import { findSubject, type PlaceRequest } from '../../../analysis/answer/find-subject.ts';
import { fitPlaceParameters } from '../../../analysis/place/fit-parameters.ts';
import type { Site } from '../../../analysis/place/site.ts';
import { InputError } from '../../../analysis/records/input-error.ts';
import { InventedLand, levelsOf, wintersOf } from '../place/invented-land.ts';
import { inventedGrid, inventedSource } from './invented-source.ts';

const land = new InventedLand({ seed: 21, winters: 40, share: 0.8 });

function asked({ lat, lon, elevationM }: Site): PlaceRequest {
  return { by: 'point', label: 'the yard', lat, lon, elevationM };
}

const few = 'So few stations';
const heightless = "The height of the point isn't known";

describe('who an answer is about', () => {
  it.each([1, 2, 5, 40, 120])(
    'is a point among %i stations, with notes on what was missing',
    async (count) => {
      const members = land.members(land.scattered(count, 60, 200));
      const source = inventedSource(members, { place: fitPlaceParameters(members) });
      const { subject, stationId } = await findSubject(source, asked(land.site(3, 4, 80)));
      expect(stationId).toBeNull();
      expect(subject.place).toMatchObject({ label: 'the yard', basis: 'history', elevation_m: 80 });
      expect(subject.place.error_c).toBeGreaterThan(0);
      expect(subject.place.error_c).toBeLessThan(6);
      expect(levelsOf(subject.winters, 4).every(Number.isFinite)).toBe(true);
      const notes = subject.notes.join('\n');
      // Of more than 80 the nearest 80 take part.
      expect(notes).toContain(count === 1 ? 'from one station,' : `from ${Math.min(80, count)} stations,`);
      expect(notes.includes(few)).toBe(count < 8);
      expect(notes).not.toContain(heightless);
    },
  );

  it('is a point of unknown height in a pack without cells, which says so and is less sure', async () => {
    const source = inventedSource(land.members(land.scattered(12, 60, 900)));
    const at = land.site(3, 4, 450);
    const known = await findSubject(source, asked(at));
    const unknown = await findSubject(source, asked({ ...at, elevationM: null }));
    expect(unknown.subject.notes.join('\n')).toContain(heightless);
    expect(unknown.subject.place.elevation_m).toBeNull();
    expect(unknown.subject.place.error_c!).toBeGreaterThan(known.subject.place.error_c! + 0.3);
  });

  it('takes the height from the cells, and believes the asker before them', async () => {
    const at = land.site(3, 4, null);
    const layout = {
      columns: 8,
      rows: 8,
      west: at.lon - 0.7,
      south: at.lat - 0.7,
      stepLonDeg: 0.2,
      stepLatDeg: 0.2,
    };
    const source = inventedSource(land.members(land.scattered(12, 60, 900)), {
      grid: inventedGrid(layout, () => 700),
    });
    const byCells = await findSubject(source, asked(at));
    const byAsker = await findSubject(source, asked({ ...at, elevationM: 100 }));
    expect(byCells.subject.place.elevation_m).toBe(700);
    expect(byAsker.subject.place.elevation_m).toBe(100);
    const mean = (values: Float64Array) => values.reduce((sum, x) => sum + x, 0) / values.length;
    const warmer = mean(levelsOf(byAsker.subject.winters)) - mean(levelsOf(byCells.subject.winters));
    // 600 m at about 6.5 °C/km.
    expect(warmer).toBeGreaterThan(2.5);
    expect(warmer).toBeLessThan(5.5);
  });

  it('answers alike from a pack built before these estimates were: without figures fitted, without cells', async () => {
    const members = land.members(land.scattered(5, 60, 200));
    const at = asked(land.site(3, 4, 80));
    const old = await findSubject(inventedSource(members), at);
    const now = await findSubject(inventedSource(members, { place: fitPlaceParameters(members) }), at);
    // With five stations the usual figures are what a build would write.
    expect(old).toEqual(now);
  });

  it('is the station itself for a point on it: its own winters to the last level, no error', async () => {
    const members = land.members(land.scattered(12, 60, 200));
    const source = inventedSource(members);
    const { subject, stationId } = await findSubject(source, asked(members[7].site));
    expect(stationId).toBe('S007');
    expect(subject.winters).toEqual(members[7].winters);
    expect(subject.place.error_c).toBe(0);
    expect(subject.notes.join(' ')).toContain('stands on station Invented S007');
    const byId = await findSubject(source, { by: 'station', id: 'S007' });
    expect(byId.subject.winters).toEqual(members[7].winters);
    expect(byId.subject.neighbours).toEqual(subject.neighbours);
  });

  it('is refused in one sentence 101 km from every station, and found at 99 km', async () => {
    const source = inventedSource(land.members([land.site(0, 0, 0), land.site(-30, -60, 0)]));
    await expect(findSubject(source, asked(land.site(0, 99, 0)))).resolves.toMatchObject({ stationId: null });
    const beyond = findSubject(source, asked(land.site(0, 101, 0)));
    await expect(beyond).rejects.toThrow(InputError);
    await expect(beyond).rejects.toThrow(
      /^[^.]*31\.9[^]* is 101 km from the nearest station \(S000\); the limit is 100 km$/,
    );
    await expect(findSubject(inventedSource([]), asked(land.site(0, 0, 0)))).rejects.toThrow(
      'the pack has no station',
    );
  });

  it('is found across the antimeridian as anywhere else', async () => {
    const answers = [0, 180].map(async (middleLon) => {
      const moved = new InventedLand({ seed: 22, winters: 40, share: 0.8, middleLon });
      const source = inventedSource(moved.members(moved.scattered(10, 60, 200)));
      const [east, west] = [moved.site(-1, 5, 50), moved.site(1, 5, 50)];
      expect([east.lon > 0, west.lon > 0]).toEqual(middleLon === 180 ? [true, false] : [false, true]);
      return Promise.all([east, west].map((site) => findSubject(source, asked(site))));
    });
    const [home, there] = await Promise.all(answers);
    home.forEach(({ subject }, i) => {
      const other = there[i].subject;
      levelsOf(other.winters, 4).forEach((level, w) =>
        expect(Math.abs(level - levelsOf(subject.winters, 4)[w])).toBeLessThan(0.0101),
      );
      expect(other.place.error_c).toBeCloseTo(subject.place.error_c!, 3);
    });
  });

  it('has no part in stations across the equator, whose winters fall in other months', async () => {
    const on = (lat: number, own: number) =>
      land.member(`E${own}`, { lat, lon: 20, elevationM: 0, coastKm: null }, own);
    const source = inventedSource([on(0.2, 1), on(0.6, 2), on(-0.1, 3), on(-0.3, 4)]);
    const north = await findSubject(source, asked({ lat: 0.05, lon: 20.1, elevationM: 0, coastKm: null }));
    const south = await findSubject(source, asked({ lat: -0.05, lon: 20.1, elevationM: 0, coastKm: null }));
    expect(north.subject.evidence.map(({ id }) => id).sort()).toEqual(['E1', 'E2']);
    expect(south.subject.evidence.map(({ id }) => id).sort()).toEqual(['E3', 'E4']);
    expect(source.read).toEqual(['E1', 'E2', 'E3', 'E4']);
  });

  it('falls back to a short record where no station has ten winters, and says whose it is', async () => {
    const member = land.member('S1', land.site(0, 0, 0), 1, (w) => w < 6);
    const { subject, stationId } = await findSubject(inventedSource([member]), asked(land.site(9, 0, 0)));
    expect(stationId).toBe('S1');
    expect(subject.winters).toEqual(member.winters);
    expect(subject.notes.join(' ')).toContain('the few winters of station Invented S1, 9.0 km away');
  });

  it('tells of no cold where no station ever saw any', async () => {
    const members = land.scattered(4, 40, 0).map((site, i) => ({
      id: `W${i}`,
      site,
      winters: wintersOf(new Float64Array(40).fill(NaN)),
    }));
    const { subject } = await findSubject(inventedSource(members), asked(land.site(1, 1, 0)));
    expect([...subject.winters.complete]).toEqual(new Array(40).fill(1));
    expect(levelsOf(subject.winters).every(Number.isNaN)).toBe(true);
  });

  it('tells of no cold beside a frost-free station, though others within reach of the model are cold', async () => {
    const coast = { id: 'W', site: land.site(0, 0, 0), winters: wintersOf(new Float64Array(40).fill(NaN)) };
    const members = [coast, ...land.members([land.site(0, 250, 0), land.site(30, 260, 0)])];
    const { subject } = await findSubject(inventedSource(members), asked(land.site(4, 0, 0)));
    expect(levelsOf(subject.winters).every(Number.isNaN)).toBe(true);
    expect(subject.notes.join(' ')).not.toContain('few winters');
  });

  it('makes one model for all points of a tile and reads each station once', async () => {
    const source = inventedSource(land.members(land.scattered(6, 40, 100)));
    const { PlaceHistories } = await import('../../../analysis/answer/place-histories.ts');
    const histories = new PlaceHistories(source);
    await Promise.all([1, 2, 3].map((km) => findSubject(source, asked(land.site(km, km, 0)), histories)));
    expect(source.read).toHaveLength(6);
  });
});
