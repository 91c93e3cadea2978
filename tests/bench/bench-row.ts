/** One line of the benchmark table. */
export interface BenchRow {
  readonly task: string;
  /** Median of the runs; `null`: the tool isn't installed. */
  readonly measured: number | null;
  readonly unit: string;
  /** What the design allows; `most` false: what it demands at least. */
  readonly budget: { readonly value: number; readonly most: boolean } | null;
  /** Time of this tool divided by ours, for rows of other tools. */
  readonly ratio: number | null;
  readonly note: string;
}

/** Median time of some runs of a task in ms, after one run to warm up. */
export function medianMs(task: () => unknown, runs = 5): Promise<number> {
  return medianAfterMs(() => null, task, runs);
}

/** As {@link medianMs} for a task that needs something made anew before each run; making it isn't measured. */
export async function medianAfterMs<T>(make: () => T, task: (made: T) => unknown, runs = 5): Promise<number> {
  await task(make());
  const times: number[] = [];
  for (let run = 0; run < runs; run++) {
    const made = make();
    const start = performance.now();
    await task(made);
    times.push(performance.now() - start);
  }
  return times.sort((a, b) => a - b)[Math.floor(runs / 2)];
}

/** Processor time of some runs of a task, the least of them, ms: what it would take where nothing else runs. */
export async function leastCpuMs(task: () => unknown, runs = 5): Promise<number> {
  let least = Infinity;
  for (let run = 0; run < runs; run++) {
    const start = process.cpuUsage();
    await task();
    const { user, system } = process.cpuUsage(start);
    least = Math.min(least, (user + system) / 1000);
  }
  return least;
}
