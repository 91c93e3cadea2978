import type { IncomingMessage } from 'node:http';

/**
 * The decoded path of a request, or undefined where it is no plain path: broken escapes, a zero byte, a backslash, a
 * step upward or a hidden file.
 */
export function plainPath(request: IncomingMessage): string | undefined {
  const [raw] = (request.url ?? '/').split(/[?#]/, 1);
  try {
    const path = decodeURIComponent(raw);
    const plain = path.startsWith('/') && !/[\0\\%?#]|\/\.|\/\//.test(path);
    return plain ? path : undefined;
  } catch {
    return undefined;
  }
}
