import { gzipSync } from 'node:zlib';

import type { Plugin } from 'vite';

import { writePostcodes } from '../../analysis/archive/us-postcodes.ts';

const MODULE = 'virtual:us-postcodes';
const RESOLVED = `\0${MODULE}`;
const FILE = 'us-postcodes.txt';

let made: Promise<string> | null = null;
/** The packages are large: they are read only when the list is made. */
function list(): Promise<string> {
  made ??= import('../build/us-postcodes.ts').then(({ allUsPostcodes }) => writePostcodes(allUsPostcodes()));
  return made;
}

/**
 * `import { url, bytes } from 'virtual:us-postcodes'`: address and size (compressed) of the list of ZIP codes, a tenth of the
 * packages it is made from. A built page has it as a file with a hash in its name, loaded only when asked for.
 */
export function serveUsPostcodes(): Plugin {
  let isBuilt = false;
  return {
    name: 'us-postcodes',
    configResolved: ({ command }) => void (isBuilt = command === 'build'),
    resolveId: (id) => (id === MODULE ? RESOLVED : null),
    async load(id) {
      if (id !== RESOLVED) return null;
      const source = await list();
      const bytes = gzipSync(source).length;
      if (!isBuilt) return `export const url = '/${FILE}'; export const bytes = ${bytes};`;
      const file = this.emitFile({ type: 'asset', name: FILE, source });
      return `export const url = import.meta.ROLLUP_FILE_URL_${file}; export const bytes = ${bytes};`;
    },
    configureServer({ middlewares }) {
      middlewares.use(`/${FILE}`, (_request, response) => {
        response.setHeader('Content-Type', 'text/plain; charset=utf-8');
        void list().then((text) => response.end(text));
      });
    },
  };
}
