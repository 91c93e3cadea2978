import type { ServerResponse } from 'node:http';

import { originsOf } from './archives.ts';

/**
 * What a page of ours may load. `connect-src` names the archives that records may be fetched from and no other host.
 * `wasm-unsafe-eval`: the database is WebAssembly. `blob:` workers: the map and the database start some of theirs from a
 * blob. Inline styles: the map sets them on its markers and controls. Images from `data:` and `blob:`: icons, and a chart
 * or map saved as a picture.
 */
function contentSecurityPolicy(archives: readonly string[]): string {
  return [
    "default-src 'self'",
    "manifest-src 'self'",
    "script-src 'self' 'wasm-unsafe-eval'",
    "worker-src 'self' blob:",
    ["connect-src 'self' blob: data:", ...originsOf(archives)].join(' '),
    "img-src 'self' data: blob:",
    "font-src 'self' data:",
    "style-src 'self' 'unsafe-inline'",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
  ].join('; ');
}

/**
 * Powers of a browser that this page never asks for; what it does use (the clipboard, to copy a sentence) stays as browsers
 * have it. Only names that all current Chromiums know: they complain of any other.
 */
const CLOSED = [
  'accelerometer',
  'autoplay',
  'camera',
  'display-capture',
  'encrypted-media',
  'gamepad',
  'geolocation',
  'gyroscope',
  'hid',
  'idle-detection',
  'local-fonts',
  'magnetometer',
  'microphone',
  'midi',
  'payment',
  'picture-in-picture',
  'publickey-credentials-get',
  'screen-wake-lock',
  'serial',
  'usb',
  'xr-spatial-tracking',
];

const SECURITY_HEADERS: Readonly<Record<string, string>> = {
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
};

/** Types by file ending that the common lists don't know, or would guess wrongly. */
const TYPES: Readonly<Record<string, string>> = {
  arrow: 'application/vnd.apache.arrow.stream',
  duckdb: 'application/octet-stream',
  wasm: 'application/wasm',
  bin: 'application/octet-stream',
  csv: 'text/csv; charset=utf-8',
  json: 'application/json; charset=utf-8',
};

/** The headers of every answer but a pack's files, workers' scripts included; given the base addresses of a site's archives. */
export function securityHeaders(archives: readonly string[]): Readonly<Record<string, string>> {
  return {
    'Content-Security-Policy': contentSecurityPolicy(archives),
    'Permissions-Policy': CLOSED.map((power) => `${power}=()`).join(', '),
    ...SECURITY_HEADERS,
  };
}

/**
 * The headers of a pack's files: data, which may do nothing at all, whatever someone has put there. Short, since a
 * visitor's browser asks for a hundred ranges of a database.
 */
export const PACK_HEADERS: Readonly<Record<string, string>> = {
  'Content-Security-Policy': "default-src 'none'; frame-ancestors 'none'",
  ...SECURITY_HEADERS,
};

/** Sets headers that an answer carries. */
export function setHeaders(response: ServerResponse, headers: Readonly<Record<string, string>>): void {
  for (const [name, value] of Object.entries(headers)) response.setHeader(name, value);
}

/** Sets type and caching of a file that was found at `pathname`. */
export function setFileHeaders(response: ServerResponse, pathname: string): void {
  const type = TYPES[pathname.slice(pathname.lastIndexOf('.') + 1)];
  if (type !== undefined) response.setHeader('Content-Type', type);
  response.setHeader('Cache-Control', cacheControl(pathname));
}

/** Files whose name carries a hash of their content never change; all others are asked for again with their ETag. */
function cacheControl(pathname: string): string {
  return /^\/assets\/.+-[\w-]{8}\.\w+$/.test(pathname) ? 'public, max-age=31536000, immutable' : 'no-cache';
}
