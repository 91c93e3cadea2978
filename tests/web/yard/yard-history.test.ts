import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { YardHistory } from '../../../web/yard/yard-history.ts';

describe('undo and redo', () => {
  it('goes back to every step and forward again, whatever the steps', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.integer(), { minLength: 1, maxLength: 60 }), (values) => {
        let history = YardHistory.startingWith(values[0]);
        for (const value of values.slice(1)) history = history.do(value);
        const back = [history.present];
        while (history.canUndo) {
          history = history.undo();
          back.push(history.present);
        }
        expect(back).toEqual([...values].reverse());
        const forth = [history.present];
        while (history.canRedo) {
          history = history.redo();
          forth.push(history.present);
        }
        expect(forth).toEqual(values);
      }),
    );
  });

  it('takes steps of one run for one, and no further than the run goes', () => {
    const history = YardHistory.startingWith(0).do(1).do(2, 'arrows a').do(3, 'arrows a').do(4, 'arrows b');
    expect(history.undo().present).toBe(3);
    expect(history.undo().undo().present).toBe(1);
    expect(history.undo().undo().undo().present).toBe(0);
  });

  it('a run does not go on over an undo', () => {
    const history = YardHistory.startingWith(0).do(1, 'arrows').undo().do(2, 'arrows').do(3, 'arrows');
    expect(history.undo().present).toBe(0);
    expect(history.canRedo).toBe(false);
  });

  it('a new step forgets what had been undone, and the same value is no step', () => {
    const history = YardHistory.startingWith('a').do('b').undo().do('c');
    expect(history.canRedo).toBe(false);
    expect(history.do('c')).toBe(history);
  });

  it('holds null like any other state: a yard taken away comes back', () => {
    const history = YardHistory.startingWith<string | null>(null).do('yard').do(null);
    expect(history.undo().present).toBe('yard');
    expect(history.undo().undo().present).toBeNull();
    expect(history.undo().undo().canUndo).toBe(false);
  });

  it('forgets the oldest of very many steps and stays whole', () => {
    let history = YardHistory.startingWith(0);
    for (let i = 1; i <= 1000; i++) history = history.do(i);
    let steps = 0;
    for (; history.canUndo; steps++) history = history.undo();
    expect(steps).toBe(200);
    expect(history.present).toBe(800);
  });
});
