import { expect, it } from 'vitest';
import { runBatch, type BatchHelper } from '../../../analysis/answer/batch-run.ts';

const places = Array.from({ length: 800 }, (_, at) => ({ lat: at / 20, lon: 0, elevationM: null }));

it('ends for all helpers when one fails, with its reason, and tells what came before', async () => {
  let asked = 0;
  const slow: BatchHelper = async (piece) => {
    asked++;
    await new Promise((resolve) => setTimeout(resolve));
    return piece.map(() => ({ problem: 'told' }));
  };
  const failing: BatchHelper = async (piece) => {
    await slow(piece);
    throw new Error('it broke');
  };
  const told: number[] = [];
  const running = runBatch(places, [slow, failing, slow], { onAnswers: (indices) => told.push(...indices) });
  await expect(running).rejects.toThrow('it broke');
  await new Promise((resolve) => setTimeout(resolve, 20));
  // One piece each was on its way, and at the most one more of those that went on before they heard.
  expect(asked).toBeLessThanOrEqual(5);
  expect(told.length).toBeLessThan(places.length / 10);
  expect(new Set(told).size).toBe(told.length);
});
