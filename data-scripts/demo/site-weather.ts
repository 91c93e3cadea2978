import { anomalyField } from './anomaly-field.ts';
import { randomStream } from './random-stream.ts';
import type { RegionalWeather } from './regional-weather.ts';
import { KM_PER_DEGREE_LAT, KM_PER_DEGREE_LON } from './shoreline.ts';
import type { Site } from './site-exposure.ts';
import { sunTable, winterness } from './timeline.ts';

/** Hourly weather of one site along the region's timeline. */
export interface SiteHours {
  /** Air at 1.5 m, °C. */
  readonly tempC: Float32Array;
  /** Wind at 10 m, m/s. */
  readonly windMs: Float32Array;
}

/** Fronts come from the north-west at this speed, km/h. */
const FRONT_KMH = 38;
const SUN = sunTable();

/** A run of the region's weather at fixed sites, which share their correlated daily anomalies. */
export function siteWeather(weather: RegionalWeather, sites: readonly Site[]): (index: number) => SiteHours {
  const { days } = weather.timeline;
  const warmth = anomalyField(sites, days, randomStream(weather.seed, 'warmth field'));
  const sky = anomalyField(sites, days, randomStream(weather.seed, 'sky field'));
  return (index) =>
    siteHours(weather, sites[index], fieldOf(warmth, sites.length, index), fieldOf(sky, sites.length, index));
}

function fieldOf(field: Float32Array, count: number, index: number): Float32Array {
  return Float32Array.from({ length: field.length / count }, (_, day) => field[day * count + index]);
}

/**
 * The hourly curve. The mixed air above the site changes with the region; the air at the ground departs from it by
 * `groundC`, which the sun lifts, the clear sky lowers, and the wind pulls back to nothing. Hollows lose more and keep it,
 * crests and shores lose less; a cloudy windy night leaves every place at the mixed air, height for height.
 */
function siteHours(weather: RegionalWeather, site: Site, warmth: Float32Array, sky: Float32Array): SiteHours {
  const { timeline, airC, windMs, cloud, seaC } = weather;
  const { hours } = timeline;
  const random = randomStream(weather.seed, `site ${site.key}`);
  const tempC = new Float32Array(hours);
  const siteWind = new Float32Array(hours);
  const delayH = Math.round(frontDelayH(site));
  const northC = -0.95 * (site.lat - 31.1);
  const heightKm = site.elevationM / 1000;
  const hollow = Math.max(0, site.pooling);
  const crest = Math.max(0, -site.pooling);
  const openness = 1 + 0.35 * crest + 0.25 * site.marineCalm - 0.22 * hollow - 0.15 * site.built;
  const loss =
    (1 + 0.25 * hollow - 0.15 * crest) *
    (1 - 0.45 * site.marineCalm) *
    (1 - 0.8 * site.marineWindy) *
    (1 - 0.16 * site.built);
  const gain = 1 - 0.38 * site.marineCalm;
  let groundC = 0;
  let noise = 0;
  let gust = 0;
  for (let day = 0; day < timeline.days; day++) {
    const wintry = winterness(timeline.dayOfYear[day]);
    const sunRow = (timeline.dayOfYear[day] - 1) * 24;
    const [warmNow, warmStep] = [warmth[day], warmth[day + 1] - warmth[day]];
    const [skyNow, skyStep] = [sky[day], sky[day + 1] - sky[day]];
    const lossPerH = (0.72 + 0.48 * wintry) * loss;
    const gainPerH = (3.4 + 2.9 * wintry) * gain;
    for (let hour = 0; hour < 24; hour++) {
      const i = day * 24 + hour;
      const source = Math.max(0, Math.min(hours - 1, i - delayH));
      const share = hour / 24;
      const sun = SUN[sunRow + hour];
      const overcast = Math.max(0, Math.min(1, cloud[source] + 0.16 * (skyNow + share * skyStep)));
      const calmed = sun > 0.1 ? 1 : Math.min(1, 0.25 + windMs[source] / 6 + 0.4 * overcast);
      gust = 0.8 * gust + 0.6 * random.normal();
      const wind = windMs[source] * openness * calmed * (1 + 0.3 * sun) * (1 + 0.16 * gust);
      const stirring = 1 + (wind / 2.6) * (wind / 2.6);
      const memoryH = groundC < 0 || sun < 0.05 ? 8.5 : 6;
      const forcing = gainPerH * sun * (1 - 0.72 * overcast) - lossPerH * (1 - 0.86 * overcast);
      groundC = (groundC + forcing) / (1 + stirring / memoryH);
      noise = 0.86 * noise + 0.51 * random.normal();
      const mixing = Math.min(1, wind / 5);
      const lapseC = heightKm * (3.2 + 4 * mixing);
      const mixedC = airC[source] + northC - lapseC + 0.75 * (warmNow + share * warmStep) + 0.7 * site.built;
      const nearSeaC = mixedC + site.marineWindy * (seaC[day] - mixedC);
      tempC[i] = nearSeaC + groundC + (0.45 - 0.2 * mixing) * noise;
      siteWind[i] = Math.max(0, wind);
    }
  }
  return { tempC, windMs: siteWind };
}

/** Hours after the region's middle (31.1 N, 42.1 W) at which a front from the north-west comes by. */
function frontDelayH(site: Site): number {
  const eastKm = (site.lon + 42.1) * KM_PER_DEGREE_LON;
  const southKm = (31.1 - site.lat) * KM_PER_DEGREE_LAT;
  return (eastKm + southKm) / Math.SQRT2 / FRONT_KMH;
}
