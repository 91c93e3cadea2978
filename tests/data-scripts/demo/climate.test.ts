import { beforeAll, describe, expect, it } from 'vitest';
import type { RegionalWeather } from '../../../data-scripts/demo/regional-weather.ts';
import { planeKm } from '../../../data-scripts/demo/shoreline.ts';
import type { Site } from '../../../data-scripts/demo/site-exposure.ts';
import { stationRecords } from '../../../data-scripts/demo/station-records.ts';
import { correlation, hoskingShape, meanOf, measuredNights, type MeasuredNights } from './measured-nights.ts';

interface Measured {
  readonly site: Site;
  readonly nights: MeasuredNights;
}

const sites = new Map<string, Measured>();
let weather: RegionalWeather;

const OUTER_COAST = ['Marram Ness Light', 'Gannet Head Light', 'Long Strand Lifeboat', 'Hook Spit'];
const TOWN = ['Sallowmere Botanic Garden', 'Sallowmere College'];
/** 28 °F and the leaf threshold of satsumas, 20 °F, in °C. */
const FRUIT_C = -2.22;
const SATSUMA_LEAF_C = -6.67;

const lowland = () => [...sites.values()].filter(({ site }) => site.coastKm > 12 && site.elevationM < 100);

const named = (names: readonly string[]) => names.map((name) => sites.get(name)!);

const shareAtOrBelow = (levelC: number, list: readonly Measured[]) =>
  meanOf(
    list.map(({ nights }) =>
      meanOf([...nights.winterFourHourC.values()].map((value) => Number(value <= levelC))),
    ),
  );

const meanMinimum = (list: readonly Measured[]) =>
  meanOf(list.map(({ nights }) => meanOf(nights.winterMinC.values())));

beforeAll(() => {
  for (const record of stationRecords()) {
    weather = record.weather;
    sites.set(record.station.name, { site: record.site, nights: measuredNights(record) });
  }
}, 120_000);

describe('how cold the winters are', () => {
  it('is about -5 °C in the mean winter at Sallowmere, colder inland, milder on the outer coast', () => {
    expect(Math.abs(meanMinimum(named(TOWN)) + 4.6)).toBeLessThan(0.8);
    expect(meanMinimum(lowland())).toBeLessThan(meanMinimum(named(TOWN)) - 0.7);
    expect(meanMinimum(named(OUTER_COAST))).toBeGreaterThan(meanMinimum(named(TOWN)) + 2.5);
  });

  it('holds 28 °F for four hours in most winters inland, in two of three at the town, in one of five or so on the outer coast', () => {
    expect(shareAtOrBelow(FRUIT_C, lowland())).toBeGreaterThan(0.65);
    expect(shareAtOrBelow(FRUIT_C, lowland())).toBeLessThan(0.88);
    expect(Math.abs(shareAtOrBelow(FRUIT_C, named(TOWN)) - 0.67)).toBeLessThan(0.1);
    expect(Math.abs(shareAtOrBelow(FRUIT_C, named(OUTER_COAST)) - 0.2)).toBeLessThan(0.1);
  });

  it('takes the leaves of satsumas about once in eight winters at the town, hardly ever on the outer coast', () => {
    const period = 1 / shareAtOrBelow(SATSUMA_LEAF_C, named(TOWN));
    expect(period).toBeGreaterThan(6);
    expect(period).toBeLessThan(13);
    expect(shareAtOrBelow(SATSUMA_LEAF_C, named(OUTER_COAST))).toBeLessThan(0.03);
  });

  it('has great freezes, at or below -11 °C at a station of the inland plain, about once in 20 to 50 winters', () => {
    const minima = lowland().map(({ nights }) => [...nights.winterMinC.values()]);
    for (const list of minima) expect(list.length).toBe(74);
    const period = 74 / meanOf(minima.map((list) => list.filter((value) => value <= -11).length));
    expect(period).toBeGreaterThan(20);
    expect(period).toBeLessThan(50);
    const lowest = meanOf(minima.map((list) => Math.min(...list)));
    expect(lowest).toBeGreaterThan(-15);
    expect(lowest).toBeLessThan(-11);
  });

  it('has a tail of winter minima like real ones: Hosking shape between 0 and 0.25', () => {
    const shapes = lowland().map(({ nights }) => hoskingShape([...nights.winterMinC.values()]));
    expect(meanOf(shapes)).toBeGreaterThan(0.02);
    expect(meanOf(shapes)).toBeLessThan(0.22);
  });

  it('leaves the far islet without a single night at or below 10 °C', () => {
    expect(Math.min(...sites.get('Far Skerry')!.nights.minC)).toBeGreaterThan(10);
  });
});

describe('how nights differ from place to place', () => {
  /** Winter nights by the region's own wind and sky in the twelve hours before dawn. */
  const nightsWhere = (test: (windMs: number, cloud: number) => boolean) => {
    const found: number[] = [];
    for (let night = 0; night < weather.timeline.days - 1; night++) {
      const ofYear = weather.timeline.dayOfYear[night];
      if (ofYear > 75 && ofYear < 320) continue;
      const hours = [night * 24 + 20, night * 24 + 33] as const;
      if (test(meanOf(weather.windMs.subarray(...hours)), meanOf(weather.cloud.subarray(...hours))))
        found.push(night);
    }
    return found;
  };
  const calm = () => nightsWhere((windMs, cloud) => windMs < 2 && cloud < 0.2);
  const windy = () => nightsWhere((windMs) => windMs > 6.5);
  const meanAt = (name: string, nights: readonly number[]) =>
    meanOf(nights.map((night) => sites.get(name)!.nights.minC[night]));

  it('puts the valley floor below the hill top on calm clear nights', () => {
    expect(calm().length).toBeGreaterThan(200);
    expect(meanAt('Hollin', calm())).toBeLessThan(meanAt('Corrow Top', calm()) - 0.7);
  });

  it('follows the height on windy nights, about 7 °C in 1000 m', () => {
    expect(windy().length).toBeGreaterThan(200);
    const [top, floor] = [sites.get('Corrow Top')!.site, sites.get('Hollin')!.site];
    const perKm =
      ((meanAt('Hollin', windy()) - meanAt('Corrow Top', windy())) / (top.elevationM - floor.elevationM)) *
      1000;
    expect(perKm).toBeGreaterThan(4.5);
    expect(perKm).toBeLessThan(9);
  });

  it('parts coast and plain on calm nights more than on windy ones', () => {
    const apart = (nights: readonly number[]) =>
      meanAt('Long Strand Lifeboat', nights) - meanAt('Plain Orchards', nights);
    expect(apart(calm())).toBeGreaterThan(apart(windy()) + 1.5);
    expect(apart(windy())).toBeGreaterThan(0);
  });

  it('has its minimum about dawn on calm nights and at any hour on windy ones', () => {
    const { hour } = sites.get('Plain Orchards')!.nights;
    const atDawn = (nights: readonly number[]) =>
      meanOf(nights.map((night) => Number(hour[night] >= 4 && hour[night] <= 8)));
    expect(atDawn(calm())).toBeGreaterThan(0.75);
    expect(atDawn(windy())).toBeLessThan(0.6);
  });

  it('loses likeness with distance', () => {
    const list = lowland();
    const nights = nightsWhere(() => true);
    const region = nights.map((night) => meanOf(list.map((one) => one.nights.minC[night])));
    const own = list.map(({ nights: { minC } }) => nights.map((night, i) => minC[night] - region[i]));
    const near: number[] = [];
    const far: number[] = [];
    for (let i = 0; i < list.length; i++) {
      for (let j = 0; j < i; j++) {
        const km = planeKm([list[i].site.lon, list[i].site.lat], [list[j].site.lon, list[j].site.lat]);
        if (km < 20) near.push(correlation(own[i], own[j]));
        if (km > 90) far.push(correlation(own[i], own[j]));
      }
    }
    expect(near.length).toBeGreaterThan(5);
    expect(far.length).toBeGreaterThan(5);
    expect(meanOf(near)).toBeGreaterThan(meanOf(far) + 0.3);
    const [orchards, farm] = ['Plain Orchards', 'Leat Farm'].map((name) =>
      nights.map((night) => sites.get(name)!.nights.minC[night]),
    );
    expect(correlation(orchards, farm)).toBeGreaterThan(0.9);
  });
});
