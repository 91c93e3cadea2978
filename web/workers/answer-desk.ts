import type { Reply, Request, TaskKind } from './messages.ts';
import { PackAnswers, type Overtaken } from './pack-answers.ts';
import { WinterTiles, type TileFetch } from './winter-tiles.ts';

/**
 * Takes requests and sends replies, without being tied to a worker. The newest request of a kind wins: older ones are
 * answered `superseded`, before their work starts or between two of its steps.
 */
export class AnswerDesk {
  readonly #newest = new Map<TaskKind, number>();
  readonly #packs = new Map<string, Promise<PackAnswers>>();

  constructor(
    private readonly send: (reply: Reply) => void,
    private readonly fetcher: TileFetch,
    /** Resolves after messages that are already waiting have been delivered. */
    private readonly pause: () => Promise<void>,
  ) {}

  async take(request: Request): Promise<void> {
    const { id, kind } = request;
    this.#newest.set(kind, id);
    const overtaken: Overtaken = async () => {
      await this.pause();
      return this.#newest.get(kind) !== id;
    };
    try {
      const answer = (await overtaken()) ? null : await this.#answer(request, overtaken);
      this.send(answer === null ? { id, outcome: 'superseded' } : { id, outcome: 'done', answer });
    } catch (error) {
      this.send({ id, outcome: 'failed', message: error instanceof Error ? error.message : String(error) });
    }
  }

  async #answer(request: Request, overtaken: Overtaken) {
    const answers = await this.#pack(request.question.packUrl);
    switch (request.kind) {
      case 'assess':
        return answers.assess(request.question);
      case 'depthDuration':
        return answers.depthDuration(request.question, overtaken);
      case 'stationPeriods':
        return answers.stationPeriods(request.question, overtaken);
      case 'surface':
        return answers.surface(request.question, overtaken);
      case 'readings':
        return answers.readings(request.question);
      case 'comparison':
        return answers.comparison(request.question, overtaken);
      case 'coverPeriods':
        return answers.coverPeriods(request.question, overtaken);
      case 'leastCover':
        return answers.leastCover(request.question);
      case 'nightsSource':
        return answers.nightsSource(request.question);
      case 'winterNights':
        return answers.winterNights(request.question);
    }
  }

  #pack(packUrl: string): Promise<PackAnswers> {
    let pack = this.#packs.get(packUrl);
    if (!pack) {
      pack = WinterTiles.open(packUrl, this.fetcher).then((tiles) => new PackAnswers(tiles));
      pack.catch(() => this.#packs.delete(packUrl));
      this.#packs.set(packUrl, pack);
    }
    return pack;
  }
}
