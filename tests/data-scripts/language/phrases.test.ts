import { describe, expect, it } from 'vitest';

import { phrasesIn } from '../../../data-scripts/language/phrases-in-source.ts';
import { phrasesInData, READ_FIELDS } from '../../../data-scripts/language/phrases-in-data.ts';
import { catalogueOf, speakingSources } from '../../../data-scripts/language/source-phrases.ts';
import { parseSource } from '../../../data-scripts/language/syntax-tree.ts';

const phrases = (path: string, text: string): string[] => phrasesIn(parseSource(path, text));

describe('phrases in sources', () => {
  it('are found in scripts, values numbered in their order', () => {
    const text = [
      'const a: string = t`Kept ${bytes} of ${most as string}`;',
      'export const B = { label: t`One`, many: n === 1 ? t`winter` : t`winters` } as const;',
      "const c = said('Yuzu') + said(name) + tag`not said` + `not said ${a}`;",
      'const d = t`${t`inside`} and “quotes” \\`ticks\\``;',
    ].join('\n');
    expect(phrases('x.ts', text)).toEqual([
      'Kept {0} of {1}',
      'One',
      'winter',
      'winters',
      'Yuzu',
      '{0} and “quotes” `ticks`',
      'inside',
    ]);
  });

  it('are found in components: in the script, in texts, attributes, blocks and snippets', () => {
    const text = `<script lang="ts">
      const title = t\`In the script\`;
    </script>
    <h2 title={t\`In an attribute\`} aria-label="{t\`In a part\`} and more">{t\`In a text\`}</h2>
    {#each list as entry (entry.id)}<Part title={t\`In a loop\`}>{entry as string}</Part>{:else}{t\`Else\`}{/each}
    {#snippet row(value: number)}{t\`Row \${value}\`}{/snippet}
    {#await import('./x.svelte') then { default: X }}<X />{:catch}{t\`Caught\`}{/await}`;
    expect(phrases('X.svelte', text)).toEqual([
      'In the script',
      'In an attribute',
      'In a part',
      'In a text',
      'In a loop',
      'Else',
      'Row {0}',
      'Caught',
    ]);
  });

  it('of every source of the project can be told', () => {
    const sources = speakingSources('.');
    expect(sources.length).toBeGreaterThan(300);
    expect(sources.every((source) => /^(web|analysis)\//.test(source))).toBe(true);
  });

  it('stand in a file by their folder', () => {
    expect(catalogueOf('web/views/life/life-words.ts')).toBe('views-life');
    expect(catalogueOf('analysis/tree/life/harm.ts')).toBe('analysis-tree-life');
    expect(catalogueOf('web/App.svelte')).toBe('page');
  });
});

describe('phrases in data', () => {
  it('are those of the fields named, each a text', () => {
    const found = phrasesInData('.');
    expect(new Set(found.map(({ source }) => source))).toEqual(new Set(Object.keys(READ_FIELDS)));
    expect(found.some(({ english }) => english === 'Yuzu')).toBe(true);
    expect(found.every(({ english }) => english.length > 2)).toBe(true);
  });
});
