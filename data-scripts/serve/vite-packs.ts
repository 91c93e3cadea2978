import type { Connect, Plugin } from 'vite';

import { precompress } from './precompress.ts';
import { packsHandler } from './packs-handler.ts';

/**
 * `/packs/` under Vite's own servers, from the folder that `npm start` would serve; nothing of it is built in. What isn't
 * there is a 404, never the page that Vite answers everything else with.
 */
export function servePacks(packs: string): Plugin {
  const handler = packsHandler(packs);
  const serve = ({ middlewares }: { middlewares: Connect.Server }): void => {
    middlewares.use('/packs/', (request, response) => {
      void handler(request, response, () => response.writeHead(404).end());
    });
  };
  return { name: 'serve-packs', configureServer: serve, configurePreviewServer: serve };
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
