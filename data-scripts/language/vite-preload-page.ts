import type { HtmlTagDescriptor, Plugin, Rolldown } from 'vite';

type Bundle = Rolldown.OutputBundle;

/**
 * `main.ts` loads `source` only once the language is chosen. So that no one waits for that, the built page names its files:
 * they are on their way with the first one.
 */
export function preloadPage(source: string): Plugin {
  return {
    name: 'preload-page',
    apply: 'build',
    transformIndexHtml: {
      order: 'post',
      handler(html, { bundle }) {
        if (!bundle) return [];
        const start = Object.values(bundle).find((file) => isChunk(file) && file.facadeModuleId === source);
        if (!start || !isChunk(start)) throw new Error(`The build made no file of ${source}`);
        const tags = [...filesOf(start, bundle)].map(tagOf);
        return tags.filter(({ attrs }) => !html.includes(String(attrs?.href)));
      },
    },
  };
}

/**
 * Names the file of a module for the bundler: what `page` always needs goes into one, but for what `main` needs before. Left to
 * itself the bundler would make a small file of each module that a later part of the page shares with it.
 */
export function fileOfPage(main: string, page: string): (id: string, context: Graph) => string | null {
  let before: Set<string> | null = null;
  let always: Set<string> | null = null;
  return (id, context) => {
    before ??= reachedFrom(main, context);
    always ??= reachedFrom(page, context);
    return id !== page && always.has(id) && !before.has(id) ? 'always' : null;
  };
}

interface Graph {
  getModuleInfo(id: string): { readonly importedIds: readonly string[] } | null;
}

/** A module and all it imports other than by `import()`. */
function reachedFrom(start: string, context: Graph): Set<string> {
  const found = new Set([start]);
  // A set that grows is gone through to its end.
  for (const id of found)
    for (const imported of context.getModuleInfo(id)?.importedIds ?? []) found.add(imported);
  return found;
}

function isChunk(file: Bundle[string]): file is Rolldown.OutputChunk {
  return file.type === 'chunk';
}

/** Names of a chunk, of all it imports, and of their styles. */
function filesOf(chunk: Rolldown.OutputChunk, bundle: Bundle, found = new Set<string>()): Set<string> {
  if (found.has(chunk.fileName)) return found;
  found.add(chunk.fileName);
  for (const name of chunk.imports) {
    const imported = bundle[name];
    if (imported && isChunk(imported)) filesOf(imported, bundle, found);
  }
  for (const style of chunk.viteMetadata?.importedCss ?? []) found.add(style);
  return found;
}

function tagOf(file: string): HtmlTagDescriptor {
  const rel = file.endsWith('.css') ? 'stylesheet' : 'modulepreload';
  return { tag: 'link', attrs: { rel, crossorigin: true, href: `./${file}` }, injectTo: 'head' };
}
