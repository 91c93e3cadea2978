import { resolve } from 'node:path';

import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vite';

import { serveCatalogues } from './data-scripts/language/vite-catalogues.ts';
import { fileOfPage, preloadPage } from './data-scripts/language/vite-preload-page.ts';
import { offlineWorker } from './data-scripts/serve/vite-offline.ts';
import made from './package.json' with { type: 'json' };
import { precompressBuild, servePacks } from './data-scripts/serve/vite-packs.ts';
import { serveUsPostcodes } from './data-scripts/serve/vite-us-postcodes.ts';

export default defineConfig({
  root: 'web',
  base: './',
  define: { 'import.meta.env.VITE_VERSION': JSON.stringify(made.version) },
  plugins: [
    svelte({ configFile: resolve('svelte.config.js') }),
    servePacks(resolve(process.env.PACKS ?? 'packs')),
    serveCatalogues(resolve('.')),
    preloadPage(resolve('web/page.ts')),
    serveUsPostcodes(),
    precompressBuild(),
    offlineWorker(),
  ],
  build: {
    outDir: '../dist',
    emptyOutDir: true,
    target: 'es2022',
    // Browsers that run the database know how to preload.
    modulePreload: { polyfill: false },
    rolldownOptions: {
      output: {
        codeSplitting: {
          includeDependenciesRecursively: false,
          groups: [{ name: fileOfPage(resolve('web/main.ts'), resolve('web/page.ts')) }],
        },
      },
    },
  },
  worker: { format: 'es' },
});
