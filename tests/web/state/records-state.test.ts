import { describe, expect, it } from 'vitest';
import type { LoadProgress, QueryResult, RecordsPort } from '../../../web/state/ports.ts';
import { RecordsState } from '../../../web/state/records-state.svelte.ts';

const RESULT: QueryResult = { columns: ['n'], rows: [[1]], truncated: false };

function makePort(fail = false): RecordsPort & { down: boolean } {
  return {
    down: fail,
    async open(onProgress: (progress: LoadProgress) => void) {
      onProgress({ loaded: 5, total: 10 });
      if (this.down) throw new Error('The connection broke off.');
    },
    hitNights: async () => RESULT,
    keptNights: () => Promise.reject(new Error('not asked')),
    run: async (sql) => (sql === 'select 1' ? RESULT : Promise.reject(new Error('no such column'))),
    close: () => {},
  };
}

describe('the database in the page', () => {
  it('counts bytes, fails with a sentence and opens on the next try', async () => {
    const port = makePort(true);
    const records = new RecordsState(port);
    expect(records.status).toBe('closed');
    await records.open();
    expect([records.status, records.error, records.progress]).toEqual([
      'failed',
      'The connection broke off.',
      { loaded: 5, total: 10 },
    ]);
    port.down = false;
    await records.open();
    expect([records.status, records.error]).toEqual(['open', null]);
  });

  it('answers, and keeps the error of a statement beside the desk', async () => {
    const records = new RecordsState(makePort());
    await records.run('select 1');
    expect(records.own).toEqual({ result: RESULT, error: null, running: false });
    await records.run('select nonsense');
    expect(records.own).toEqual({ result: null, error: 'no such column', running: false });
    const asked = records.askNights({
      place: { by: 'station', id: 'A' },
      hours: 4,
      limitC: -5,
      gainCalmC: 0,
      gainWindyC: 0,
    });
    expect(records.nights.running).toBe(true);
    await asked;
    expect(records.nights.result).toEqual(RESULT);
  });
});
