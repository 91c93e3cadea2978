import { expect, it } from 'vitest';
import { WALL_SPOT } from '../../../analysis/answer/advice-customer.ts';
import { AdviceHere } from '../../../analysis/answer/advice-here.ts';
import { findSubject } from '../../../analysis/answer/find-subject.ts';
import { IN_THE_OPEN, standingSpot } from '../../../analysis/answer/standing-spot.ts';
import { lastOf } from '../../../analysis/math/steps.ts';
import { CITRUS_TYPES } from '../../../analysis/tree/catalogue.ts';
import { MATURE_TREE } from '../../../analysis/tree/penalties.ts';
import type { CounterAsk } from '../../../web/state/counter-port.ts';
import { counterAdvice, counterQuestions } from '../../../web/workers/counter-answers.ts';
import { WinterTiles } from '../../../web/workers/winter-tiles.ts';
import { BARE_TEXTS } from '../../analysis/answer/bare-texts.ts';
import { madeFetch, PACK_URL } from './made-pack.ts';

const SOME = CITRUS_TYPES.filter((_, at) => at % 5 === 0);

it('tells the classes and questions that the analysis tells, on the page’s spot and under its cover', async () => {
  const tiles = await WinterTiles.open(PACK_URL, madeFetch(3).fetcher);
  const place = { by: 'station', id: 'S1' } as const;
  const { subject } = await findSubject(tiles, place);
  const wall = standingSpot({ ...BARE_TEXTS, spot: WALL_SPOT });
  const rows = SOME.map(({ id }) => ({ key: id, typeId: id, ageYears: null }));
  for (const protection of [
    null,
    { ...BARE_TEXTS, spot: 'out-of-wind', cover: 'sheet,tied' },
    // What a thermometer of one's own has measured is a spot as well.
    { ...BARE_TEXTS, measured: 'c100_150_200_20', cover: 'sheet,tied' },
  ]) {
    const ask: CounterAsk = {
      packUrl: PACK_URL,
      place,
      tree: MATURE_TREE,
      protection,
      rows: [...rows, { key: 'gone', typeId: 'plum', ageYears: null }],
      answers: {},
      nights: null,
    };
    const page = protection ? standingSpot({ ...protection, cover: null }) : IN_THE_OPEN;
    const here = new AdviceHere(subject, { page, wall });
    const question = {
      rows: SOME.map((type) => ({ key: type.id, type, ageYears: null })),
      tree: MATURE_TREE,
      pageCovers: protection ? (['sheet', 'tied'] as const) : [],
      hasSpot: protection !== null,
      answers: {},
      nights: { page: null, wall: null },
    };
    const told = lastOf(counterAdvice(subject, ask));
    expect(told.rows).toEqual(here.rows(question));
    expect(told.winters.used).toBe(subject.winters.complete.filter((flag) => flag === 1).length);
    expect(lastOf(counterQuestions(subject, ask))).toEqual(lastOf(here.asking(question)));
  }
});

it('asks of a warm wall only where the page knows of no spot, chosen or measured', async () => {
  const tiles = await WinterTiles.open(PACK_URL, madeFetch(3).fetcher);
  const place = { by: 'station', id: 'S1' } as const;
  const { subject } = await findSubject(tiles, place);
  const asked = (protection: CounterAsk['protection']) => {
    const ask: CounterAsk = {
      ...{ packUrl: PACK_URL, place, tree: MATURE_TREE, protection, nights: null },
      rows: CITRUS_TYPES.map(({ id }) => ({ key: id, typeId: id, ageYears: null })),
      answers: { home: 'yes', young: 'no', stands: 'either', fruit: 'no' },
    };
    return lastOf(counterQuestions(subject, ask)).map(({ unknown }) => unknown);
  };
  expect([asked(null), asked(BARE_TEXTS)]).toEqual([['wall'], ['wall']]);
  expect(asked({ ...BARE_TEXTS, spot: 'out-of-wind' })).toEqual([]);
  expect(asked({ ...BARE_TEXTS, measured: 'c0_10_20_20' })).toEqual([]);
});
