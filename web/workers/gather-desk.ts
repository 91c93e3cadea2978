import { assemblePack } from '../../analysis/gather/assemble-pack.ts';
import { boxOf } from '../../analysis/gather/pack-box.ts';
import { t } from '../../analysis/language/t.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import type { GatherProgress } from '../gather/brought.ts';
import { loadJoined } from '../gather/joined-pack.ts';
import { OwnStations } from '../gather/own-stations.ts';
import { readBrought } from '../gather/read-brought.ts';
import { sha256Of } from '../kept/sha256.ts';
import {
  drawnSurroundings,
  NO_SURROUNDINGS,
  prepareOutlines,
  realSurroundings,
} from '../gather/world-land.ts';
import type { GatherReply, GatherRequest, GatherTasks, MadePack } from './gather-messages.ts';
import type { AnswerOf, RequestOf } from './task-messages.ts';

/** Between two reports of progress, bytes. */
const REPORT_BYTES = 1e6;

interface Task {
  readonly tell: (progress: GatherProgress) => void;
  readonly signal: AbortSignal;
}

type Question<K extends keyof GatherTasks> = GatherTasks[K]['question'];

/** The worker's side: reads files, keeps their readings, and makes a pack of them. One task is at work at a time. */
export class GatherDesk {
  readonly #stations = new OwnStations();
  readonly #waited = new Map<number, AbortController>();
  #last: Promise<void> = Promise.resolve();

  constructor(
    private readonly reply: (reply: GatherReply) => void,
    private readonly fetcher: (url: string) => Promise<Response>,
    private readonly delivered: () => Promise<void>,
  ) {}

  take(request: GatherRequest): Promise<void> {
    if (request.kind === 'drop') {
      this.#waited.get(request.id)?.abort();
      return Promise.resolve();
    }
    const stopper = new AbortController();
    this.#waited.set(request.id, stopper);
    this.#last = this.#last.then(() => this.#work(request, stopper.signal));
    return this.#last;
  }

  async #work(request: RequestOf<GatherTasks>, signal: AbortSignal): Promise<void> {
    const { id } = request;
    const task: Task = { tell: (progress) => this.reply({ id, progress }), signal };
    try {
      signal.throwIfAborted();
      this.reply({ id, answer: await this.#answer(request, task) });
      // While the reader looks at what was found; making the pack has it at hand then.
      if (request.kind === 'examine' && this.#stations.known) void prepareOutlines();
    } catch (error) {
      if (signal.aborted) return;
      const failure = error instanceof Error ? error.message : String(error);
      this.reply({ id, failure, plain: error instanceof InputError });
    } finally {
      this.#waited.delete(id);
    }
  }

  #answer(request: RequestOf<GatherTasks>, task: Task): Promise<AnswerOf<GatherTasks>> {
    switch (request.kind) {
      case 'read':
        return this.#read(request.question, task);
      case 'forget':
        this.#stations.forget(request.question.key);
        return Promise.resolve(null);
      case 'examine':
        return this.#stations.examine(request.question.stations, this.#turns(task));
      case 'make':
        return this.#make(request.question, task);
    }
  }

  async #read(file: Question<'read'>, { tell, signal }: Task): Promise<GatherTasks['read']['answer']> {
    let told = 0;
    const total = file.blob.size;
    const read = await readBrought(
      file,
      async (bytes) => {
        if (bytes < total && bytes - told < REPORT_BYTES) return;
        told = bytes;
        tell({ doing: 'reading', bytes, total });
        // Packed bytes come at once: nobody would be heard who wants to stop.
        await this.delivered();
      },
      signal,
    );
    await this.delivered();
    signal.throwIfAborted();
    this.#stations.take(file.key, file.name, read);
    return read.found;
  }

  async #make({ id, title, invented, ...wish }: Question<'make'>, task: Task): Promise<MadePack> {
    const own = await this.#stations.all(wish.stations, this.#turns(task));
    if (wish.join !== null) task.tell({ doing: 'fetching' });
    const joined = wish.join === null ? null : await loadJoined(wish.join, this.fetcher);
    task.signal.throwIfAborted();
    const ownPlaces = own.stations.map(({ built }) => built.station);
    const box = boxOf([...ownPlaces, ...(joined?.pack.stations ?? [])]);
    const drawn = joined?.pack.manifest.invented ? joined.land : null;
    const around = drawn ? drawnSurroundings(drawn) : await realSurroundings(box, ownPlaces);
    task.signal.throwIfAborted();
    const pack = assemblePack({
      description: {
        id,
        title,
        // What stands beside invented stations can't be told apart from them in an answer.
        invented: invented || (joined?.pack.manifest.invented ?? false),
        sources: [...(joined?.pack.manifest.sources ?? []), ...wish.sources],
      },
      computed: own.stations,
      joined: joined?.pack ?? null,
      ...(around ?? NO_SURROUNDINGS),
      places: wish.places ?? null,
      notes: [
        ...own.notes,
        ...(around
          ? []
          : [t`The outlines of the land could not be reached, so no distance to the coast is known.`]),
      ],
    });
    const files = [...pack.files].map(async ([path, text]) => {
      const content = new Blob([text as BlobPart]);
      return { path, content, sha256: await sha256Of(content) };
    });
    return {
      files: await Promise.all(files),
      tables: {
        stations: new Blob([pack.tables.stations]),
        winters: new Blob([pack.tables.winters]),
        nights: new Blob(own.stations.map(({ nights }) => nights)),
        dropped: new Blob(own.stations.map(({ droppedLines }) => droppedLines)),
      },
      joinedStations: pack.joinedStations,
      stations: pack.stations,
      manifest: pack.manifest([]),
    };
  }

  /** Between stations: tells how far it is, and hears whether somebody still waits. */
  #turns({ tell, signal }: Task): (stations: number, total: number) => Promise<void> {
    return async (stations, total) => {
      tell({ doing: 'computing', stations, total });
      await this.delivered();
      signal.throwIfAborted();
    };
  }
}
