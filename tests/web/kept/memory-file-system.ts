/** A directory of the browser's private file system in memory: what Node lacks, as far as `web/kept` uses it. */
export class MemoryDirectory {
  readonly kind = 'directory';
  readonly children = new Map<string, MemoryDirectory | MemoryFile>();

  constructor(
    readonly name: string,
    private readonly room: Room,
  ) {}

  async getDirectoryHandle(name: string, { create = false } = {}): Promise<MemoryDirectory> {
    const found = this.children.get(name);
    if (found instanceof MemoryDirectory) return found;
    if (found) throw new DOMException(name, 'TypeMismatchError');
    if (!create) throw new DOMException(name, 'NotFoundError');
    const made = new MemoryDirectory(name, this.room);
    this.children.set(name, made);
    return made;
  }

  async getFileHandle(name: string, { create = false } = {}): Promise<MemoryFile> {
    const found = this.children.get(name);
    if (found instanceof MemoryFile) return found;
    if (found) throw new DOMException(name, 'TypeMismatchError');
    if (!create) throw new DOMException(name, 'NotFoundError');
    const made = new MemoryFile(name, this.room);
    this.children.set(name, made);
    return made;
  }

  async removeEntry(name: string, { recursive = false } = {}): Promise<void> {
    const found = this.children.get(name);
    if (!found) throw new DOMException(name, 'NotFoundError');
    if (found instanceof MemoryDirectory && found.children.size > 0 && !recursive)
      throw new DOMException(name, 'InvalidModificationError');
    this.children.delete(name);
  }

  async *keys(): AsyncGenerator<string> {
    yield* [...this.children.keys()];
  }

  async *entries(): AsyncGenerator<[string, MemoryDirectory | MemoryFile]> {
    yield* [...this.children.entries()];
  }

  /** Paths of all files below. */
  paths(before = ''): string[] {
    return [...this.children].flatMap(([name, child]) =>
      child instanceof MemoryDirectory ? child.paths(`${before}${name}/`) : [before + name],
    );
  }
}

/** How many bytes may be written in all. */
export interface Room {
  left: number;
}

/** A file whose content changes when its writer is closed, as the standard has it. */
export class MemoryFile {
  readonly kind = 'file';
  #content = new Blob([]);

  constructor(
    readonly name: string,
    private readonly room: Room,
  ) {}

  async getFile(): Promise<File> {
    return new File([this.#content], this.name);
  }

  async createWritable(): Promise<WritableStream<Uint8Array>> {
    const chunks: BlobPart[] = [];
    return new WritableStream({
      write: (chunk) => {
        if (chunk.length > this.room.left) throw new DOMException('full', 'QuotaExceededError');
        this.room.left -= chunk.length;
        chunks.push(chunk as BlobPart);
      },
      close: () => void (this.#content = new Blob(chunks)),
    });
  }
}

/** Locks of one page as the browser gives them, as far as `web/kept` uses them. */
export class MemoryLocks {
  readonly #held = new Map<string, { shared: boolean; count: number }>();
  readonly #waiting: (() => void)[] = [];

  async request<T>(
    name: string,
    options: { mode?: 'shared' | 'exclusive'; ifAvailable?: boolean },
    work: (lock: { name: string } | null) => T | Promise<T>,
  ): Promise<T> {
    const shared = options.mode === 'shared';
    while (!this.#free(name, shared)) {
      if (options.ifAvailable) return work(null);
      await new Promise<void>((resolve) => this.#waiting.push(resolve));
    }
    const held = this.#held.get(name) ?? { shared, count: 0 };
    held.count += 1;
    this.#held.set(name, held);
    try {
      return await work({ name });
    } finally {
      held.count -= 1;
      if (held.count === 0) this.#held.delete(name);
      this.#waiting.splice(0).forEach((wake) => wake());
    }
  }

  #free(name: string, shared: boolean): boolean {
    const held = this.#held.get(name);
    return !held || (shared && held.shared);
  }
}
