import type { PlaceRequest } from '../../../analysis/answer/find-subject.ts';
import { describe, expect, it } from 'vitest';
import type { Ranking } from '../../../analysis/answer/assessment.ts';
import { MATURE_TREE } from '../../../analysis/tree/penalties.ts';
import { AnswerState } from '../../../web/state/answer-state.svelte.ts';
import type { AssessPort, AssessQuestion } from '../../../web/state/ports.ts';

interface Pending {
  readonly question: AssessQuestion;
  readonly resolve: (assessment: Ranking) => void;
  readonly reject: (error: Error) => void;
}

/** A worker whose answers the test gives itself, in any order. */
function makePort(): AssessPort & { pending: Pending[] } {
  const pending: Pending[] = [];
  return {
    pending,
    assess: (question) => new Promise((resolve, reject) => pending.push({ question, resolve, reject })),
    depthDuration: async ({ place }) => {
      if (stationOf(place) === 'broken') throw new Error('no tile');
      return [{ hours: 4, period_winters: 10, level_c: -5, low_c: -6, high_c: -4 }];
    },
    stationPeriods: async () => Promise.reject(new Error('no tiles')),
    winterNights: async () => [{ winter: 1990, date: '1989-12-23', kind: 'windy' }],
  };
}

const at = (id: string): PlaceRequest => ({ by: 'station', id });
const stationOf = (place: PlaceRequest | undefined) => (place?.by === 'station' ? place.id : null);
const ask = (stationId: string): AssessQuestion => ({
  packUrl: '/',
  protection: null,
  place: at(stationId),
  tree: MATURE_TREE,
  years: 10,
});
const answer = (label: string): Ranking => ({ place: { label } }) as Ranking;
const settle = (): Promise<void> => new Promise((done) => setTimeout(done));

describe('the answer', () => {
  it('keeps the old one while the new is worked out, and the latest question wins', async () => {
    const port = makePort();
    const state = new AnswerState(port);
    void state.ask(ask('A'));
    port.pending[0].resolve(answer('A'));
    await settle();
    expect([state.status, state.assessment?.place.label]).toEqual(['ready', 'A']);
    void state.ask(ask('B'));
    void state.ask(ask('C'));
    expect([state.status, state.assessment?.place.label]).toEqual(['working', 'A']);
    port.pending[2].resolve(answer('C'));
    port.pending[1].resolve(answer('B'));
    await settle();
    expect([state.status, state.assessment?.place.label]).toEqual(['ready', 'C']);
    expect(stationOf(state.answered?.place)).toBe('C');
  });

  it('drops what was overtaken in silence', async () => {
    const port = makePort();
    const state = new AnswerState(port);
    void state.ask(ask('A'));
    port.pending[0].reject(Object.assign(new Error('overtaken'), { name: 'Superseded' }));
    await settle();
    expect([state.status, state.error]).toEqual(['working', null]);
  });

  it('fails with the sentence of the worker, and asks the same again on retry', async () => {
    const port = makePort();
    const state = new AnswerState(port);
    void state.ask(ask('A'));
    port.pending[0].reject(new Error('The winters of this area could not be read.'));
    await settle();
    expect([state.status, state.error]).toEqual(['failed', 'The winters of this area could not be read.']);
    void state.retry();
    expect(stationOf(port.pending[1].question.place)).toBe('A');
    port.pending[1].resolve(answer('A'));
    await settle();
    expect([state.status, state.error]).toEqual(['ready', null]);
  });

  it('keeps the curves of the place before until the new ones come, and says when they do not', async () => {
    const state = new AnswerState(makePort());
    expect([state.cold, state.coldFailed]).toEqual([null, false]);
    await state.askDepthDuration({ packUrl: '/', protection: null, place: at('A') });
    expect(state.cold).toHaveLength(1);
    const next = state.askDepthDuration({ packUrl: '/', protection: null, place: at('broken') });
    expect(state.cold).toHaveLength(1);
    await next;
    expect([state.cold, state.coldFailed]).toEqual([null, true]);
    await state.askDepthDuration({ packUrl: '/', protection: null, place: at('A') });
    expect([state.cold?.length, state.coldFailed]).toEqual([1, false]);
  });

  it('keys nights by winter, and goes without periods when they fail', async () => {
    const state = new AnswerState(makePort());
    await state.askNights({ packUrl: '/', protection: null, place: at('A'), hours: 4, level: 'wood' });
    expect(state.nights.get(1990)?.date).toBe('1989-12-23');
    await state.askPeriods({
      packUrl: '/',
      protection: null,
      tree: MATURE_TREE,
      typeId: 'yuzu',
      level: 'wood',
    });
    expect(state.periods.size).toBe(0);
  });
});
