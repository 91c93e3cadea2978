import { describe, expect, it } from 'vitest';
import { runBatch, type BatchHelper } from '../../../analysis/answer/batch-run.ts';
import { BatchState, type BatchLoaded } from '../../../web/state/batch-state.svelte.ts';

const loaded = (count: number): BatchLoaded => ({
  name: 'x.csv',
  packUrl: 'http://localhost/p/',
  rows: Array.from({ length: count }, (_, place) => ({
    line: place + 2,
    label: '',
    customer: '',
    postcode: '',
    place,
  })),
  places: Array.from({ length: count }, (_, at) => ({ lat: at / 10, lon: 0, elevationM: null })),
  bad: [],
  ignored: [],
});
const run = { asked: 'what', types: [{ id: 'a', name: 'A' }] };
/** Tells of each place its own latitude, after letting others have a turn. */
const helper: BatchHelper = async (places) => {
  await Promise.resolve();
  return places.map(({ lat }) => ({ problem: String(lat) }));
};
const wanted = (count: number) => loaded(count).places.map(({ lat }) => ({ problem: String(lat) }));

describe('a batch of the page', () => {
  it('ends with every place answered in its own row, whoever answers', async () => {
    for (const helpers of [[helper], [helper, helper, helper]]) {
      let clock = 0;
      const batch = new BatchState<string>(
        (_, places, options) => runBatch(places, helpers, options),
        () => (clock += 100),
      );
      expect(batch.status).toBe('empty');
      await batch.load(() => loaded(53));
      expect(batch.status).toBe('loaded');
      await batch.start(run);
      expect(batch).toMatchObject({ status: 'finished', done: 53, answers: wanted(53), error: null });
      expect(batch.secondsLeft).toBe(0);
    }
  });
  it('keeps what is done when it is stopped, and can be answered anew', async () => {
    let atOnce = 0;
    const batch = new BatchState<string>(
      (_, places, options) =>
        runBatch(
          places,
          [
            async (piece) => {
              const told = await helper(piece);
              if (batch.done >= 16) batch.cancel();
              if (batch.status === 'cancelled') atOnce = batch.answers.filter((one) => one !== null).length;
              return told;
            },
          ],
          options,
        ),
      () => 0,
    );
    await batch.load(() => loaded(60));
    await batch.start(run);
    expect(batch.status).toBe('cancelled');
    // What was answered stands at once, while a piece is still on its way.
    expect(atOnce).toBe(16);
    const answered = batch.answers.filter((one) => one !== null).length;
    expect(answered).toBe(batch.done);
    expect(answered).toBeGreaterThanOrEqual(16);
    expect(answered).toBeLessThan(60);
    batch.clear();
    expect(batch).toMatchObject({ status: 'empty', loaded: null, answers: [] });
  });
  it('hears nothing more of a file that was let go meanwhile', async () => {
    const slow: BatchHelper = async (piece) => {
      const told = await helper(piece);
      if (batch.done === 8) await batch.load(() => loaded(3));
      return told;
    };
    const batch = new BatchState<string>(
      (_, places, options) => runBatch(places, [slow], options),
      () => 0,
    );
    await batch.load(() => loaded(60));
    await batch.start(run);
    expect(batch).toMatchObject({ status: 'loaded', done: 0, answers: [] });
    expect(batch.loaded!.places).toHaveLength(3);
  });
  it('keeps what is done when a worker breaks, and says why', async () => {
    let left = 2;
    const breaking: BatchHelper = (places) =>
      left-- > 0 ? helper(places) : Promise.reject(new Error('it broke'));
    const batch = new BatchState<string>(
      (_, places, options) => runBatch(places, [breaking], options),
      () => 0,
    );
    await batch.load(() => loaded(40));
    await batch.start(run);
    expect(batch).toMatchObject({ status: 'failed', error: 'it broke', done: 16 });
    expect(batch.answers.filter((one) => one !== null)).toHaveLength(16);
  });
  it('says why a file is refused, and forgets the one before', async () => {
    const batch = new BatchState<string>(
      async () => true,
      () => 0,
    );
    await batch.load(() => loaded(3));
    await batch.load(() => {
      throw new Error('x.csv is empty.');
    });
    expect(batch).toMatchObject({ status: 'empty', loaded: null, error: 'x.csv is empty.' });
    await batch.start(run);
    expect(batch.status).toBe('empty');
  });
});
