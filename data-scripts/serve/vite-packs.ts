import type { Plugin } from 'vite';

import { precompress } from './precompress.ts';
import { packsHandler } from './packs-handler.ts';

/** `/packs/` under Vite's own server, from the folder that `npm start` would serve; nothing of it is built in. */
export function servePacks(packs: string): Plugin {
  const handler = packsHandler(packs);
  return {
    name: 'serve-packs',
    configureServer: (server) => void server.middlewares.use('/packs/', handler),
    configurePreviewServer: (server) => void server.middlewares.use('/packs/', handler),
  };
}

/** Writes the compressed copies of the built files as the last step of a build. */
export function precompressBuild(): Plugin {
  return {
    name: 'precompress',
    apply: 'build',
    writeBundle: {
      order: 'post',
      sequential: true,
      handler: async ({ dir }) => void (dir && (await precompress(dir))),
    },
  };
}
