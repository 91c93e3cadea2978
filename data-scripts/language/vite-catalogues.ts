import type { Plugin } from 'vite';

import { catalogueFolder, LANGUAGES, readCatalogue, translationsOf } from './catalogue.ts';

const MODULE = 'virtual:catalogues';
const RESOLVED = `\0${MODULE}`;

/** A language's phrases as the page reads them: one JSON object, English to translation. */
export function catalogueJson(root: string, language: string): string {
  return JSON.stringify(Object.fromEntries(translationsOf(readCatalogue(root, language))));
}

/**
 * `import catalogues from 'virtual:catalogues'`: for each language the address of its phrases. A built page has them as files
 * with a hash in their name, which only readers of that language fetch; Vite's own server makes them anew each time.
 */
export function serveCatalogues(root: string): Plugin {
  let isBuilt = false;
  return {
    name: 'catalogues',
    configResolved: ({ command }) => void (isBuilt = command === 'build'),
    resolveId: (id) => (id === MODULE ? RESOLVED : null),
    load(id) {
      if (id !== RESOLVED) return null;
      const entries = LANGUAGES.map((language) => {
        if (!isBuilt) return `${language}: '/catalogues/${language}.json'`;
        this.addWatchFile(catalogueFolder(root, language));
        const source = catalogueJson(root, language);
        const file = this.emitFile({ type: 'asset', name: `phrases-${language}.json`, source });
        return `${language}: import.meta.ROLLUP_FILE_URL_${file}`;
      });
      return `export default { ${entries.join(', ')} };`;
    },
    configureServer({ middlewares }) {
      for (const language of LANGUAGES) {
        middlewares.use(`/catalogues/${language}.json`, (_request, response) => {
          response.setHeader('Content-Type', 'application/json; charset=utf-8');
          response.end(catalogueJson(root, language));
        });
      }
    },
  };
}
