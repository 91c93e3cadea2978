/** Key of an address whose whole query is folded into one text. */
const FOLDED_KEY = 's';

/** An unfolded query may not be longer than this, bytes: a yard and all choices take a few thousand. */
const UNFOLDED_MAX = 16_000;

/** A query made short for a code on paper: deflated, in letters of an address. `?a=b` gives `?s=...`. */
export async function foldQuery(search: string): Promise<string> {
  const bytes = new TextEncoder().encode(search.replace(/^\?/, ''));
  const folded = await throughStream(bytes, new CompressionStream('deflate-raw'), Infinity);
  const text = btoa(String.fromCharCode(...folded));
  return `?${FOLDED_KEY}=${text.replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '')}`;
}

/** The query that was folded; one that isn't folded comes back as it is, and so does one that makes no sense. */
export async function unfoldQuery(search: string): Promise<string> {
  const folded = new URLSearchParams(search).get(FOLDED_KEY);
  if (folded === null) return search;
  try {
    const binary = atob(folded.replaceAll('-', '+').replaceAll('_', '/'));
    const bytes = Uint8Array.from(binary, (letter) => letter.charCodeAt(0));
    const plain = await throughStream(bytes, new DecompressionStream('deflate-raw'), UNFOLDED_MAX);
    return `?${new TextDecoder('utf-8', { fatal: true }).decode(plain)}`;
  } catch {
    return search;
  }
}

/** Puts the unfolded query in the address before the page reads it, so that all below only knows plain ones. */
export async function unfoldAddress({
  location,
  history,
}: Pick<Window, 'location' | 'history'>): Promise<void> {
  const search = await unfoldQuery(location.search);
  if (search !== location.search) history.replaceState(null, '', location.pathname + search + location.hash);
}

/** @throws RangeError for more than `most` bytes, so that a small text can't swell without end; TypeError for other bytes */
async function throughStream(
  bytes: Uint8Array<ArrayBuffer>,
  stream: CompressionStream | DecompressionStream,
  most: number,
): Promise<Uint8Array> {
  const reader = new Blob([bytes]).stream().pipeThrough(stream).getReader();
  const chunks: Uint8Array[] = [];
  let size = 0;
  for (let part = await reader.read(); !part.done; part = await reader.read()) {
    size += part.value.length;
    if (size > most) {
      void reader.cancel();
      throw new RangeError(`The folded address holds more than ${most} bytes.`);
    }
    chunks.push(part.value);
  }
  const whole = new Uint8Array(size);
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}
