import { describe, expect, it } from 'vitest';
import { MATURE_TREE, type TreeState } from '../../../analysis/tree/penalties.ts';
import type { Surface, SurfaceQuestion } from '../../../web/state/ports.ts';
import { againstOf, mapLevel, surfaceAsk, type MapChoice } from '../../../web/state/surface-ask.ts';
import { SurfaceState, type MapPort } from '../../../web/state/surface-state.svelte.ts';
import { madeSurface } from '../surface/made-surface.ts';

interface Pending {
  readonly question: SurfaceQuestion;
  readonly resolve: (surface: Surface) => void;
  readonly reject: (error: Error) => void;
}

function makePort(): MapPort & { pending: Pending[]; closed: number } {
  const pending: Pending[] = [];
  return {
    pending,
    closed: 0,
    close() {
      this.closed += 1;
      for (const { reject } of pending) reject(new Error('closed'));
    },
    surface: (question) => new Promise((resolve, reject) => pending.push({ question, resolve, reject })),
    assess: () => Promise.reject(new Error('no tile')),
  };
}

const choice: MapChoice = {
  packUrl: '/',
  protection: null,
  tree: MATURE_TREE,
  typeId: 'yuzu',
  level: 'wood',
  shows: 'periods',
  againstId: 'pummelo',
  winters: 'all',
};
const aged = (ageYears: number): TreeState => ({ ...MATURE_TREE, ageYears });
const settle = (): Promise<void> => new Promise((done) => setTimeout(done));
const one = madeSurface(1, 1, () => 5);
const two = madeSurface(1, 1, () => 9);

describe('what the map asks', () => {
  it('is about life where a tree could be grown, about the level chosen otherwise', () => {
    expect(mapLevel('where', 'fruit')).toBe('kill');
    expect(surfaceAsk({ ...choice, shows: 'where' }).first.level).toBe('kill');
    expect(surfaceAsk(choice).first.level).toBe('wood');
  });
  it('of two kinds asks both, of recent winters the last 30 against all', () => {
    const { first, second } = surfaceAsk({ ...choice, shows: 'types' });
    expect([first.typeId, second?.typeId]).toEqual(['yuzu', 'pummelo']);
    const recent = surfaceAsk({ ...choice, shows: 'recent' });
    expect([recent.first.winters, recent.second?.winters]).toEqual(['last30', 'all']);
  });
  it('never holds a kind against itself', () => {
    expect(againstOf('yuzu', 'yuzu')).not.toBe('yuzu');
    expect(againstOf('no_such_type', 'yuzu')).not.toBe('no_such_type');
    expect(againstOf('pummelo', 'yuzu')).toBe('pummelo');
  });
});

describe('the surface', () => {
  it('stops what is worked out of one pack when another is asked about, and of that pack nothing', async () => {
    const port = makePort();
    const state = new SurfaceState(port);
    void state.ask(surfaceAsk(choice));
    void state.ask(surfaceAsk({ ...choice, winters: 'last30' }));
    expect(port.closed).toBe(0);
    const last = state.ask(surfaceAsk({ ...choice, packUrl: '/other/' }));
    expect(port.closed).toBe(1);
    await settle();
    expect([state.status, state.error]).toEqual(['working', null]);
    port.pending.at(-1)!.resolve(two);
    await last;
    expect([state.status, state.answer?.ask.first.packUrl]).toEqual(['ready', '/other/']);
  });
  it('keeps the old one while the new is worked out; the newest question wins', async () => {
    const port = makePort();
    const state = new SurfaceState(port);
    void state.ask(surfaceAsk(choice));
    port.pending[0].resolve(one);
    await settle();
    expect([state.status, state.answer?.surface]).toEqual(['ready', one]);
    void state.ask(surfaceAsk({ ...choice, level: 'leaf' }));
    void state.ask(surfaceAsk({ ...choice, level: 'fruit' }));
    expect([state.status, state.answer?.surface]).toEqual(['working', one]);
    port.pending[2].resolve(two);
    port.pending[1].reject(new Error('overtaken'));
    await settle();
    expect([state.status, state.answer?.surface, state.error]).toEqual(['ready', two, null]);
    expect(state.answer?.ask.first.level).toBe('fruit');
  });

  it('follows a slider: the answer on its way is shown, then the last position is asked', async () => {
    const port = makePort();
    const state = new SurfaceState(port);
    for (const age of [9, 8, 7, 6]) void state.ask(surfaceAsk({ ...choice, tree: aged(age) }));
    expect(port.pending.length).toBe(1);
    port.pending[0].resolve(one);
    await settle();
    expect(state.answer?.ask.first.tree.ageYears).toBe(9);
    expect(port.pending.map(({ question }) => question.tree.ageYears)).toEqual([9, 6]);
    port.pending[1].resolve(two);
    await settle();
    expect([state.status, state.answer?.ask.first.tree.ageYears]).toEqual(['ready', 6]);
  });

  it('asks both sides of a difference one after the other, and nothing when turned round', async () => {
    const port = makePort();
    const state = new SurfaceState(port);
    void state.ask(surfaceAsk({ ...choice, shows: 'types' }));
    port.pending[0].resolve(one);
    await settle();
    expect([state.answer, port.pending.length]).toEqual([null, 2]);
    port.pending[1].resolve(two);
    await settle();
    expect([state.answer?.surface, state.answer?.against]).toEqual([one, two]);
    await state.ask(surfaceAsk({ ...choice, shows: 'types', typeId: 'pummelo', againstId: 'yuzu' }));
    expect([state.answer?.surface, state.answer?.against]).toEqual([two, one]);
    expect(port.pending.length).toBe(2);
  });

  it('says what failed and asks again', async () => {
    const port = makePort();
    const state = new SurfaceState(port);
    void state.ask(surfaceAsk(choice));
    port.pending[0].reject(new Error('grid.bin broke off while it was loading.'));
    await settle();
    expect([state.status, state.error]).toEqual(['failed', 'grid.bin broke off while it was loading.']);
    void state.retry();
    port.pending[1].resolve(one);
    await settle();
    expect([state.status, state.answer?.surface]).toEqual(['ready', one]);
  });

  it('tells nothing about a point that can’t be answered', async () => {
    const question = {
      packUrl: '/',
      protection: null,
      place: { by: 'station', id: 'A' },
      tree: MATURE_TREE,
      years: 10,
    } as const;
    expect(await new SurfaceState(makePort()).point(question)).toBeNull();
  });
});
