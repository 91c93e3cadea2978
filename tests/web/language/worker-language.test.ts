import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';

import { speak, spokenLocale, spokenPhrases, t } from '../../../analysis/language/t.ts';
import { told, workOnceTold } from '../../../web/language/worker-language.ts';

type Handler = (event: { data: unknown }) => void;
interface WorkerScope {
  onmessage: Handler | null;
}
let scope: WorkerScope;
beforeEach(() => {
  scope = { onmessage: null };
  vi.stubGlobal('self', scope);
});
afterEach(() => {
  vi.unstubAllGlobals();
  speak(null);
});

describe('a worker', () => {
  it('speaks what its page speaks before anything of it is loaded, and takes messages in their order', async () => {
    speak(new Map([['Cold', 'Frío']]), 'es-CL');
    const sent: unknown[] = [];
    told({ postMessage: (message) => sent.push(message) });
    speak(null);

    const taken: unknown[] = [];
    let loaded = '';
    workOnceTold<string>(async () => {
      loaded = t`Cold`;
      return ({ data }) => void taken.push(data);
    });
    expect(loaded).toBe('');
    scope.onmessage!({ data: sent[0] });
    scope.onmessage!({ data: 'first' });
    scope.onmessage!({ data: 'second' });
    await vi.waitFor(() => expect(taken).toEqual(['first', 'second']));
    scope.onmessage!({ data: 'third' });
    expect(taken).toEqual(['first', 'second', 'third']);
    expect([loaded, spokenLocale(), spokenPhrases()?.size]).toEqual(['Frío', 'es-CL', 1]);
  });
});
