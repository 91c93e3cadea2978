import { bestSpots } from '../../analysis/spot/best-spots.ts';
import { offsetField } from '../../analysis/spot/offset-field.ts';
import { READY_YARDS } from '../../analysis/spot/ready-yards.ts';
import type { YardReply, YardRequest } from './yard-messages.ts';

const BEST_COUNT = 3;
/** Rounds and grid of {@link warmUp}, m. */
const WARM_ROUNDS = 2;
const WARM_STEP_M = 1;

/**
 * The first fields of a worker take some 150 ms, until the engine has compiled what they run through, and the later ones
 * 25. These are thrown away before a reader waits for one.
 */
function warmUp(): void {
  for (let round = 0; round < WARM_ROUNDS; round++)
    for (const { yard } of READY_YARDS) offsetField(yard, 1, WARM_STEP_M);
}

function answer(request: YardRequest): { reply: YardReply; handedOver: Transferable[] } {
  const { id, kind, question } = request;
  if (kind === 'field') {
    const field = offsetField(question.yard, question.latDeg, question.stepM);
    const { calmC, windyC, calmHalfRangeC, windyHalfRangeC, blocked } = field;
    const arrays = [calmC, windyC, calmHalfRangeC, windyHalfRangeC, blocked];
    return { reply: { id, answer: field }, handedOver: arrays.map(({ buffer }) => buffer as ArrayBuffer) };
  }
  const { yard, latDeg, grownWidthM } = question;
  return {
    reply: { id, answer: bestSpots(yard, latDeg, { grownWidthM, count: BEST_COUNT }) },
    handedOver: [],
  };
}

/** What the worker does with a message. */
export function take({ data }: MessageEvent<YardRequest>): void {
  try {
    const { reply, handedOver } = answer(data);
    self.postMessage(reply, { transfer: handedOver });
  } catch (error) {
    const failure = error instanceof Error ? error.message : String(error);
    self.postMessage({ id: data.id, failure } satisfies YardReply);
  }
}

warmUp();
