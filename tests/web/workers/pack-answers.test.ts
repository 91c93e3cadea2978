import { describe, expect, it } from 'vitest';
import { assess } from '../../../analysis/answer/assess.ts';
import { findSubject } from '../../../analysis/answer/find-subject.ts';
import { MATURE_TREE } from '../../../analysis/tree/penalties.ts';
import { CITRUS_TYPES, findType } from '../../../analysis/tree/catalogue.ts';
import { LEVELS } from '../../../analysis/tree/levels.ts';
import { NO_LEVEL_GAIN_SPREADS } from '../../../analysis/tree/level-gains.ts';
import { PackAnswers } from '../../../web/workers/pack-answers.ts';
import { WinterTiles } from '../../../web/workers/winter-tiles.ts';
import { madeFetch, PACK_URL, TILE } from './made-pack.ts';

const never = async (): Promise<boolean> => false;
const question = {
  packUrl: PACK_URL,
  protection: null,
  place: { by: 'station' as const, id: 'S3' },
  tree: MATURE_TREE,
  years: 10,
};

async function made(stations = 8) {
  const pack = madeFetch(stations);
  return { ...pack, answers: new PackAnswers(await WinterTiles.open(PACK_URL, pack.fetcher)) };
}

describe('answers from winters', () => {
  it('give every type and level, and fetch list, manifest and tile once however much is asked', async () => {
    const { answers, state } = await made();
    const [first, second] = await Promise.all([
      answers.assess(question),
      answers.assess({ ...question, place: { by: 'station', id: 'S4' } }),
    ]);
    expect(first.types).toHaveLength(37);
    expect(first.types[0].levels.map(({ level }) => level)).toEqual(LEVELS);
    expect(second.place.label).toBe('Station 4');
    expect(state.calls).toEqual(['stations.json', 'pack.json', `winters/${TILE}.arrow`]);
  });

  it('class each station on the map by the count of its full answer', async () => {
    const { answers } = await made();
    const tree = { ...MATURE_TREE, ageYears: 2 };
    for (const level of LEVELS) {
      const periods = (await answers.stationPeriods(
        { packUrl: PACK_URL, protection: null, tree, typeId: 'meyer_lemon', level },
        never,
      ))!;
      expect(periods).toHaveLength(8);
      const full = await answers.assess({ ...question, tree });
      const wanted = full.types
        .find(({ id }) => id === 'meyer_lemon')!
        .levels.find((entry) => entry.level === level)!;
      const got = periods.find(({ stationId }) => stationId === 'S3')!;
      const { hits, winters, period, low } = wanted.counted;
      expect(got.winters).toBe(winters);
      expect(got.headline.basis).toBe(hits === 0 ? 'not seen' : 'counted');
      expect(got.headline.period).toBe(hits === 0 ? null : period);
      expect(got.headline.low).toBe(low);
      expect(got.winters).toBe(wanted.counted.winters);
    }
  });

  it('give in two parts what the command gives in one', async () => {
    const { answers, fetcher } = await made();
    const { packUrl, place, tree, years } = question;
    const source = await WinterTiles.open(PACK_URL, fetcher);
    const { subject } = await findSubject(source, place);
    const whole = assess(subject, {
      types: CITRUS_TYPES,
      levels: LEVELS,
      tree,
      gains: NO_LEVEL_GAIN_SPREADS,
      years,
    });
    const ranking = await answers.assess(question);
    const cold = await answers.depthDuration({ packUrl, protection: null, place }, never);
    expect({ ...ranking, cold }).toEqual(whole);
    expect(cold!.filter(({ level_c }) => level_c !== null).length).toBeGreaterThan(40);
  });

  it('stop between two fits of the curves when overtaken', async () => {
    const { answers } = await made();
    let steps = 0;
    const cold = await answers.depthDuration(
      { packUrl: PACK_URL, protection: null, place: question.place },
      async () => ++steps > 2,
    );
    expect([cold, steps]).toEqual([null, 3]);
  });

  it('stop between stations when overtaken', async () => {
    const { answers } = await made();
    let steps = 0;
    const periods = await answers.stationPeriods(
      { packUrl: PACK_URL, protection: null, tree: MATURE_TREE, typeId: 'meyer_lemon', level: 'wood' },
      async () => ++steps > 3,
    );
    expect(periods).toBeNull();
    expect(steps).toBe(4);
  });

  it('name the night behind each winter: the coldest over the kinds, on the date of that kind', async () => {
    const { answers, tables } = await made();
    const hours = findType('meyer_lemon')!.thresholds.wood.hours;
    const nights = await answers.winterNights({
      packUrl: PACK_URL,
      protection: null,
      place: question.place,
      hours,
      level: 'wood',
    });
    const winters = tables.get('S3')!;
    const j = 4; // 4 hours
    expect(hours).toBe(4);
    expect(nights).toHaveLength(winters.winter.length);
    nights.forEach(({ winter, date, kind }, w) => {
      const calmer = winters.coldest[0][j][w] <= winters.coldest[1][j][w];
      expect(winter).toBe(winters.winter[w]);
      expect(kind).toBe(calmer ? 'calm' : 'windy');
      expect(date).toBe(`${winter}-01-${calmer ? '05' : '19'}`);
    });
  });

  it('compare several places: each as if asked alone, one without an answer says why', async () => {
    const { answers } = await made();
    const { packUrl, tree, years } = question;
    const point = { by: 'point' as const, label: 'Between', lat: 30.6, lon: -41.9, elevationM: null };
    const far = { ...point, label: 'Far', lat: -60 };
    const compared = (await answers.comparison(
      {
        packUrl,
        places: [question.place, far, point],
        tree,
        years,
        protection: null,
        hours: 4,
        level: 'wood' as const,
      },
      never,
    ))!;
    expect(compared).toHaveLength(3);
    for (const [i, place] of [question.place, null, point].entries()) {
      const one = compared[i];
      if (one.problem !== null || place === null) {
        expect([i, one.problem]).toEqual([1, expect.stringMatching(/km/)]);
        continue;
      }
      expect(one.ranking).toEqual(await answers.assess({ ...question, place }));
      expect(one.nights).toEqual(
        await answers.winterNights({ packUrl, protection: null, place, hours: 4, level: 'wood' }),
      );
    }
    let steps = 0;
    const overtaken = async (): Promise<boolean> => ++steps > 1;
    const asked = {
      packUrl,
      places: [question.place, point],
      tree,
      years,
      protection: null,
      hours: 4,
      level: 'wood' as const,
    };
    expect(await answers.comparison(asked, overtaken)).toBeNull();
  });

  it('read the winters three ways, the first as the ranking has it, at a station and between', async () => {
    const { answers } = await made();
    const between = { by: 'point' as const, label: 'Between', lat: 30.57, lon: -41.95, elevationM: null };
    for (const place of [question.place, between]) {
      const asked = { packUrl: PACK_URL, protection: null, place, tree: MATURE_TREE };
      const ranking = await answers.assess({ ...question, place });
      expect(ranking.place.basis).toBe(place.by === 'station' ? 'station' : 'history');
      for (const typeId of ['meyer_lemon', 'satsuma_owari', 'yuzu']) {
        const { whole, last30, moving } = await answers.readings({ ...asked, typeId, level: 'wood' });
        const type = ranking.types.find(({ id }) => id === typeId)!;
        const level = type.levels.find((entry) => entry.level === 'wood')!;
        expect(whole).toMatchObject({ winters: level.counted.winters, hits: level.counted.hits });
        expect(whole!.headline).toEqual(level.headline);
        expect(last30!.last).toBe(whole!.last);
        expect(last30!.hits).toBe(level.beside.recent!.hits);
        expect(moving!.winter).toBe(whole!.last);
      }
    }
  });

  it('refuse what they do not know in one sentence', async () => {
    const { answers } = await made();
    await expect(answers.assess({ ...question, place: { by: 'station', id: 'nope' } })).rejects.toThrow(
      'station "nope" is not in the pack, which has 8 stations',
    );
    await expect(
      answers.stationPeriods(
        { packUrl: PACK_URL, protection: null, tree: MATURE_TREE, typeId: 'apple', level: 'wood' },
        never,
      ),
    ).rejects.toThrow('Type "apple" is not among the 37 types known.');
  });
});

describe('winters over HTTP', () => {
  it('try again after a failure instead of remembering it', async () => {
    const { fetcher, state } = madeFetch(3);
    state.fail = true;
    await expect(WinterTiles.open(PACK_URL, fetcher)).rejects.toThrow(
      'stations.json could not be loaded: the server answered 503.',
    );
    state.fail = false;
    const tiles = await WinterTiles.open(PACK_URL, fetcher);
    state.fail = true;
    await expect(tiles.winters(tiles.stations[0])).rejects.toThrow('n30w042.arrow could not be loaded');
    state.fail = false;
    expect((await tiles.winters(tiles.stations[0])).winter).toHaveLength(60);
  });

  it('say what is wrong with a damaged tile, a missing station, a lost connection', async () => {
    const { fetcher, files } = madeFetch(2);
    const tiles = await WinterTiles.open(PACK_URL, fetcher);
    await expect(tiles.winters({ ...tiles.stations[0], id: 'S9' })).rejects.toThrow(
      'Tile n30w042 holds no winters of station S9.',
    );
    files[`winters/${TILE}.arrow`] = new TextEncoder().encode('<html>not found</html>');
    const again = await WinterTiles.open(PACK_URL, fetcher);
    await expect(again.winters(again.stations[0])).rejects.toThrow('not an Arrow stream');
    const offline = async (): Promise<never> => {
      throw new TypeError('Failed to fetch');
    };
    await expect(WinterTiles.open(PACK_URL, offline)).rejects.toThrow('could not be reached');
  });
});
