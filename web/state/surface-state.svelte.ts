import type { Ranking } from '../../analysis/answer/assessment.ts';
import type { MapShows } from './chosen.ts';
import type { AssessQuestion, Surface, SurfacePort, SurfaceQuestion } from './ports.ts';

/** What the map asks: one surface, or two to hold against each other. */
export interface SurfaceAsk {
  readonly shows: MapShows;
  readonly first: SurfaceQuestion;
  readonly second: SurfaceQuestion | null;
}

/** An answered {@link SurfaceAsk}. */
export interface SurfaceAnswer {
  readonly ask: SurfaceAsk;
  readonly surface: Surface;
  readonly against: Surface | null;
}

export type SurfaceStatus = 'idle' | 'working' | 'ready' | 'failed';

/** The port of surfaces, which also tells about a single point that the reader points at; closed, it begins anew at the next question. */
export type MapPort = SurfacePort & {
  assess(question: AssessQuestion): Promise<Ranking>;
  close(): void;
};

/** Surfaces kept, so that a difference turned round or a look back asks nothing. */
const KEPT = 6;

/**
 * The surface on the map. While a new one is worked out the old one stays. The newest question wins; but while only the tree
 * changes (a slider in motion) an answer on its way is awaited, so that the map follows instead of starving.
 */
export class SurfaceState {
  #status = $state<SurfaceStatus>('idle');
  #answer = $state.raw<SurfaceAnswer | null>(null);
  #error = $state<string | null>(null);
  #kept: readonly (readonly [question: string, surface: Surface])[] = [];
  #asked: SurfaceAsk | null = null;
  #waiting: SurfaceAsk | null = null;
  #turn = 0;

  constructor(private readonly port: MapPort) {}

  get status(): SurfaceStatus {
    return this.#status;
  }
  get answer(): SurfaceAnswer | null {
    return this.#answer;
  }
  get error(): string | null {
    return this.#error;
  }

  /** Ask for a surface; the same question again asks nothing. */
  async ask(ask: SurfaceAsk): Promise<void> {
    if (this.#asked && sameJson(this.#asked, ask) && this.#status !== 'failed') {
      this.#waiting = null;
      return;
    }
    if (this.#status === 'working' && this.#asked && onlyTreeDiffers(this.#asked, ask)) {
      this.#waiting = ask;
      return;
    }
    const turn = ++this.#turn;
    // The cells of one pack go on when overtaken, which is of use to its next question alone.
    if (this.#asked && this.#asked.first.packUrl !== ask.first.packUrl) this.port.close();
    this.#asked = ask;
    this.#waiting = null;
    this.#status = 'working';
    this.#error = null;
    try {
      const surface = await this.#surface(ask.first);
      const against = ask.second && turn === this.#turn ? await this.#surface(ask.second) : null;
      if (turn !== this.#turn) return;
      this.#answer = { ask, surface, against };
      this.#status = 'ready';
    } catch (error) {
      if (turn !== this.#turn) return;
      this.#error = error instanceof Error ? error.message : String(error);
      this.#status = 'failed';
    }
    const waiting = this.#waiting;
    if (waiting) await this.ask(waiting);
  }

  /** Ask again what failed. */
  retry(): Promise<void> {
    return this.#asked ? this.ask(this.#asked) : Promise.resolve();
  }

  /** The full answer at a point the reader points at; `null` when it can't be had or a newer point took over. */
  async point(question: AssessQuestion): Promise<Ranking | null> {
    try {
      return await this.port.assess(question);
    } catch {
      return null;
    }
  }

  async #surface(asked: SurfaceQuestion): Promise<Surface> {
    const key = JSON.stringify(asked);
    const kept = this.#kept.find(([question]) => question === key);
    const surface = kept ? kept[1] : await this.port.surface(asked);
    const others = this.#kept.filter(([question]) => question !== key);
    this.#kept = [...others, [key, surface] as const].slice(-KEPT);
    return surface;
  }
}

function sameJson(a: unknown, b: unknown): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

function onlyTreeDiffers(a: SurfaceAsk, b: SurfaceAsk): boolean {
  const treeless = ({ shows, first, second }: SurfaceAsk) => [
    shows,
    { ...first, tree: null },
    second && { ...second, tree: null },
  ];
  return sameJson(treeless(a), treeless(b));
}
