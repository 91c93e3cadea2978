import { findSubject, type PlaceRequest } from '../../analysis/answer/find-subject.ts';
import { PlaceHistories } from '../../analysis/answer/place-histories.ts';
import type { Subject } from '../../analysis/answer/subject.ts';
import type { Steps } from '../../analysis/math/steps.ts';
import { countedNights, counterAdvice, counterQuestions } from './counter-answers.ts';
import { chosenTypes, lives, livesWithRanges, yearHere } from './life-answers.ts';
import type { LifeReply, LifeRequest, LifeTasks } from './life-messages.ts';
import type { AnswerOf, RequestOf } from './task-messages.ts';
import { WinterTiles, type TileFetch } from './winter-tiles.ts';

/** A pack with the models of the areas asked about: another place nearby then costs little. */
interface OpenedPack {
  readonly tiles: WinterTiles;
  readonly histories: PlaceHistories;
}

/** Work between two looks at the messages that wait, ms. */
const STRETCH_MS = 40;

/**
 * Takes questions that go through a place's nights and sends replies, without being tied to a worker. Between two stretches
 * of work it tells how far it is and hears whether somebody still waits for the answer.
 */
export class LifeDesk {
  readonly #open = new Set<number>();
  #pack: { readonly url: string; readonly opened: Promise<OpenedPack> } | null = null;
  #place: { readonly key: string; readonly subject: Promise<Subject> } | null = null;

  constructor(
    private readonly send: (reply: LifeReply) => void,
    private readonly fetcher: TileFetch,
    /** Resolves after messages that are already waiting have been delivered. */
    private readonly pause: () => Promise<void>,
    private readonly nowMs: () => number,
  ) {}

  async take(request: LifeRequest): Promise<void> {
    const { id, kind } = request;
    if (kind === 'drop') {
      this.#open.delete(id);
      return;
    }
    this.#open.add(id);
    try {
      const subject = await this.#subject(request.question.packUrl, request.question.place);
      const answer = await this.#work(id, stepsOf(request, subject));
      if (answer !== null) this.send({ id, answer });
    } catch (error) {
      if (this.#open.has(id))
        this.send({ id, failure: error instanceof Error ? error.message : String(error) });
    } finally {
      this.#open.delete(id);
    }
  }

  /** The answer, or `null` when nobody waits for it any more. */
  async #work<Answer>(id: number, steps: Steps<Answer>): Promise<Answer | null> {
    let stretchFrom = -Infinity;
    for (;;) {
      if (this.nowMs() - stretchFrom > STRETCH_MS) {
        await this.pause();
        if (!this.#open.has(id)) return null;
        stretchFrom = this.nowMs();
      }
      const step = steps.next();
      if (step.done) return step.value;
      if (this.nowMs() - stretchFrom > STRETCH_MS) this.send({ id, progress: step.value });
    }
  }

  #subject(packUrl: string, place: PlaceRequest): Promise<Subject> {
    if (this.#pack?.url !== packUrl) {
      const opened = WinterTiles.open(packUrl, this.fetcher).then((tiles) => ({
        tiles,
        histories: new PlaceHistories(tiles),
      }));
      this.#pack = { url: packUrl, opened };
      this.#place = null;
    }
    const { opened } = this.#pack;
    const key = JSON.stringify(place);
    if (this.#place?.key !== key)
      this.#place = { key, subject: opened.then((pack) => subjectOf(pack, place)) };
    const { subject } = this.#place;
    // What failed is asked anew next time.
    subject.catch(() => (this.#pack = this.#place = null));
    return subject;
  }
}

async function subjectOf({ tiles, histories }: OpenedPack, place: PlaceRequest): Promise<Subject> {
  return (await findSubject(tiles, place, histories)).subject;
}

function stepsOf(request: RequestOf<LifeTasks>, subject: Subject): Steps<AnswerOf<LifeTasks>> {
  switch (request.kind) {
    case 'life':
      return lives(subject, request.question);
    case 'lifeRanges':
      return livesWithRanges(subject, request.question);
    case 'year':
      return yearHere(subject, request.question);
    case 'choose':
      return chosenTypes(subject, request.question);
    case 'advice':
      return counterAdvice(subject, request.question);
    case 'adviceQuestions':
      return counterQuestions(subject, request.question);
    case 'adviceNights':
      return countedNights(subject, request.question);
  }
}
