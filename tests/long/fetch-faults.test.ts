import { existsSync, mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';

import fc from 'fast-check';
import { expect, it } from 'vitest';

import { InputError } from '../../analysis/records/input-error.ts';
import { fetchArchive } from '../../data-scripts/fetch/fetch-archive.ts';
import type { Fault } from '../data-scripts/fetch/loopback-archive.ts';
import { LoopbackArchive, recordOf } from '../data-scripts/fetch/loopback-archive.ts';

const IDS = ['ZZ000000001', 'ZZ000000002', 'ZZ000000003'];
const PATHS = ['/ghcnd-stations.txt', '/ghcnd-inventory.txt', ...IDS.map(recordOf)];

const RECORD = new LoopbackArchive().files.get(recordOf(IDS[0])) as Buffer;
const PACKED = gzipSync(RECORD);

/** Faults, and the two bodies that may come in place of a file by how many of their bytes are there. */
type Plan = Fault | { kind: 'packed'; bytes: number } | { kind: 'cropped'; bytes: number };

const plan: fc.Arbitrary<Plan> = fc.oneof(
  fc.record({ kind: fc.constant('cut' as const), afterBytes: fc.nat(40_000) }),
  fc.record({
    kind: fc.constant('status' as const),
    status: fc.constantFrom(403, 404, 408, 416, 429, 500, 503),
  }),
  fc.record({ kind: fc.constant('short' as const), promised: fc.integer({ min: 31_000, max: 60_000 }) }),
  fc.record({ kind: fc.constant('redirect' as const), to: fc.constantFrom(...PATHS, '/nowhere') }),
  fc.record({ kind: fc.constant('packed' as const), bytes: fc.nat(PACKED.length) }),
  fc.record({ kind: fc.constant('cropped' as const), bytes: fc.nat(RECORD.length) }),
);

function asFault(planned: Plan): Fault {
  if (planned.kind === 'packed') {
    const headers = { 'Content-Encoding': 'gzip', ETag: '"packed"' };
    return { kind: 'replace', body: PACKED.subarray(0, planned.bytes), headers };
  }
  if (planned.kind === 'cropped') {
    const headers = { ETag: `"${'0'.repeat(32)}"` };
    return { kind: 'replace', body: RECORD.subarray(0, planned.bytes), headers };
  }
  return planned;
}

/**
 * Whatever goes wrong on the way, a run ends in its report or in one sentence, a file under a final name is always
 * whole, and a run over a sound line brings everything.
 */
it('never leaves a half or wrong file under its final name', async () => {
  const plans = fc.array(fc.tuple(fc.constantFrom(...PATHS), plan), { maxLength: 12 });
  await fc.assert(
    fc.asyncProperty(plans, fc.boolean(), fc.boolean(), async (faults, ranges, lengths) => {
      const archive = new LoopbackArchive();
      Object.assign(archive, { ranges, lengths });
      const address = await archive.open();
      const out = mkdtempSync(join(tmpdir(), 'fetch-faults-'));
      const run = () =>
        fetchArchive({
          near: { lat: 31, lon: -42 },
          km: 60,
          out,
          archive: address,
          pauseMs: 0,
          backoffMs: 0,
          tries: 2,
        });
      try {
        for (const [path, planned] of faults) archive.break(path, asFault(planned));
        for (let runs = 0; runs < 2; runs++) {
          await run().catch((error: unknown) => {
            expect(error).toBeInstanceOf(InputError);
            expect((error as Error).message).not.toContain('\n');
          });
          for (const id of IDS) {
            const path = join(out, `${id}.csv`);
            if (existsSync(path)) expect(readFileSync(path)).toEqual(archive.files.get(recordOf(id)));
          }
        }
        archive.mend();
        expect((await run()).stations.map(({ id }) => id)).toEqual(IDS);
        expect(
          readdirSync(out, { recursive: true }).filter((name) => /\.(part|tmp|plain)/.test(String(name))),
        ).toEqual([]);
      } finally {
        await archive.close();
        rmSync(out, { recursive: true, force: true });
      }
    }),
    { numRuns: Number(process.env.FUZZ_RUNS ?? 1000), endOnFailure: true },
  );
});
