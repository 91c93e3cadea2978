import { existsSync } from 'node:fs';

import type { TestProject } from 'vitest/node';

import { serveSite } from '../../data-scripts/serve/site-server.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** Address of the built page, with the slash at its end. */
    siteUrl: string;
    /** Folder of the packs behind it, for counts made without the page. */
    packsFolder: string;
    /** Folder of the built page, for tests that serve it in their own way. */
    pageFolder: string;
  }
}

/** Serves `dist`, or the built page in the folder PAGE, and the packs of PACKS for all browser tests; `npm test` has built both before. */
export default async function serveBuiltPage(project: TestProject): Promise<() => Promise<void>> {
  const page = process.env.PAGE || 'dist';
  const packs = process.env.PACKS || '.cache/test-packs';
  for (const file of [`${page}/index.html`, `${packs}/index.json`]) {
    if (!existsSync(file))
      throw new Error(`${file} is absent: "npm test" builds the page and the demo pack first`);
  }
  const site = await serveSite({ page, packs });
  project.provide('siteUrl', site.url);
  project.provide('packsFolder', packs);
  project.provide('pageFolder', page);
  return () => site.close();
}
