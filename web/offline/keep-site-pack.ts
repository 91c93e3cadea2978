import { t } from '../../analysis/language/t.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import { checkManifest, type PackIndexEntry } from '../../analysis/records/pack.ts';
import { packUrl } from '../data/load-pack.ts';
import { reach } from '../data/reach.ts';
import { keepWhole, type KeptPack, type Put } from '../kept/kept-packs.ts';
import { sha256Of } from '../kept/sha256.ts';

/** Up to here a file's checksum is compared, bytes: the browser takes it of a whole file in memory only. */
const CHECKED_BYTES = 64_000_000;

const MANIFEST = 'pack.json';

export interface Keeping {
  /** Absolute address of the folder `packs/`. */
  readonly base: string;
  readonly onBytes: (loaded: number, total: number) => void;
  readonly signal: AbortSignal;
}

/** True where the site answers now; a list of packs kept by the browser doesn't count. */
export async function siteAnswers(base: string, patienceMs: number): Promise<boolean> {
  try {
    const signal = AbortSignal.timeout(patienceMs);
    return (await fetch(new URL('index.json', base), { cache: 'no-store', signal })).ok;
  } catch {
    return false;
  }
}

/** A file of the site's pack, past everything kept. @throws InputError in one sentence */
function fromSite(url: string, signal?: AbortSignal): Promise<Response> {
  return reach(url, (address) => fetch(address, { cache: 'no-cache', signal }));
}

/** The manifest as the site has it now, to be compared with the kept one. @throws InputError where the site can't be reached */
export async function manifestOnSite(
  base: string,
  entry: PackIndexEntry,
  signal?: AbortSignal,
): Promise<string> {
  return (await fromSite(packUrl(base, entry) + MANIFEST, signal)).text();
}

/**
 * Keeps one of the site's packs on this device: each file with the size, and up to 64 MB the checksum, that the pack says.
 * @throws InputError in one sentence: not reached, damaged, or no room
 * @throws DOMException AbortError when it was stopped
 */
export async function keepSitePack(
  entry: PackIndexEntry,
  { base, onBytes, signal }: Keeping,
): Promise<KeptPack> {
  const text = await manifestOnSite(base, entry, signal);
  const { files } = checkManifest(parsed(text), MANIFEST);
  const total = files.reduce((sum, { bytes }) => sum + bytes, 0);
  let done = 0;
  const write = async (put: Put): Promise<void> => {
    onBytes(0, total);
    for (const file of files) {
      const { body } = await fromSite(packUrl(base, entry) + file.path, signal);
      let loaded = 0;
      const counted = body!.pipeThrough(
        new TransformStream<Uint8Array, Uint8Array>({
          transform: (chunk, controller) => {
            loaded += chunk.length;
            onBytes(done + loaded, total);
            controller.enqueue(chunk);
          },
        }),
      );
      if (file.bytes <= CHECKED_BYTES) await put(file.path, await checked(counted, file));
      else await put(file.path, counted);
      if (loaded !== file.bytes) throw damaged(file.path);
      done += loaded;
    }
    await put(MANIFEST, text);
  };
  return keepWhole({ ...entry, bytes: total }, false, write, signal);
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw damaged(MANIFEST);
  }
}

async function checked(
  stream: ReadableStream<Uint8Array>,
  { path, sha256 }: { readonly path: string; readonly sha256: string },
): Promise<Blob> {
  const content = await new Response(stream).blob();
  if ((await sha256Of(content)) !== sha256) throw damaged(path);
  return content;
}

function damaged(path: string): InputError {
  return new InputError(
    t`${path} arrived damaged: it is not the file that the pack lists. Nothing was kept.`,
  );
}
