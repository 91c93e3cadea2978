import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

import { afterEach, beforeEach, describe, expect, it } from 'vitest';

import { rawTexts } from '../../../data-scripts/language/raw-texts.ts';

let root: string;
beforeEach(() => {
  root = mkdtempSync(path.join(tmpdir(), 'raw-'));
  for (const folder of ['web/a', 'web/b', 'analysis'])
    mkdirSync(path.join(root, folder), { recursive: true });
});
afterEach(() => rmSync(root, { recursive: true }));

function foundIn(markup: string): string[] {
  writeFileSync(path.join(root, 'web/a/X.svelte'), markup);
  return rawTexts(root, ['web/a'], 'markup');
}

describe('texts that no phrase holds', () => {
  it('are told with their line: texts, attributes that are read, strings shown, texts for components', () => {
    const markup = [
      '<p title="A hint">Some words</p>',
      '{#if yes}{n === 1 ? `One winter` : many}{/if}',
      '<Part title="Winters" kind="plain">{t`Said`}</Part>',
      '<p>{t`Of ${n === 1 ? "the one" : x} said`}</p>',
    ];
    expect(foundIn(markup.join('\n'))).toEqual([
      'web/a/X.svelte:1: title=A hint',
      'web/a/X.svelte:1: Some words',
      'web/a/X.svelte:2: One winter',
      'web/a/X.svelte:3: title=Winters',
      'web/a/X.svelte:4: the one',
    ]);
  });

  it('are not units, code, names marked so, classes, or what is compared', () => {
    const markup =
      '<p class="no words">{t`Said`} °F, 3 km</p><code>select x</code><b translate="no">A Name</b>' +
      '{#if name === "Some words"}–{/if}<p style:width="{w}em"></p>' +
      '<Group options={[{ value: "day first", label: t`2 March` }]} /><style>p { color: red; }</style>';
    expect(foundIn(markup)).toEqual([]);
  });

  it('are looked for in the folders asked for', () => {
    writeFileSync(path.join(root, 'web/b/Y.svelte'), '<p>Words</p>');
    expect(foundIn('<p>{t`Said`}</p>')).toEqual([]);
    expect(rawTexts(root, [], 'markup')).toEqual(['web/b/Y.svelte:1: Words']);
  });

  it('of scripts are strings that look like sentences, without those for programmers', () => {
    writeFileSync(
      path.join(root, 'analysis/x.ts'),
      "import x from 'some words';\nthrow new Error('A fault of ours');\nconst a = 'Two words';\nconst b = t`Said so`;",
    );
    expect(rawTexts(root, ['analysis'], 'scripts')).toEqual(['analysis/x.ts:3: Two words']);
  });
});
