import { fileURLToPath } from 'node:url';

import boundaries from 'eslint-plugin-boundaries';
import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import ts from 'typescript-eslint';

/** Rooms of `analysis`, lowest first: a room may import itself and the rooms of lower floors. */
const FLOORS = [
  ['math', 'units', 'language'],
  ['records'],
  ['read', 'clean'],
  ['night'],
  ['winter', 'extremes'],
  ['place'],
  ['tree'],
  ['spot', 'cover'],
  ['answer'],
  ['gather', 'archive'],
];

const rooms = FLOORS.flat();
const arrows = FLOORS.flatMap((floor, level) =>
  floor.map((room) => ({
    from: { element: { type: room } },
    allow: { to: { element: { type: [room, ...FLOORS.slice(0, level).flat()] } } },
  })),
);

/** A folder of the top may import itself and `others`. */
const mayImport = (folder, others) => ({
  from: { element: { type: folder } },
  allow: { to: { element: { type: [folder, ...others] } } },
});

export default ts.config(
  { ignores: ['dist/', '.cache/', 'packs/', 'node_modules/', '.svelte-kit/'] },
  ...ts.configs.recommended,
  ...svelte.configs.recommended,
  { languageOptions: { globals: { ...globals.browser, ...globals.node } } },
  {
    rules: {
      '@typescript-eslint/no-unused-vars': [
        'error',
        { ignoreRestSiblings: true, varsIgnorePattern: '^_', argsIgnorePattern: '^_' },
      ],
    },
  },
  { files: ['**/*.svelte', '**/*.svelte.ts'], languageOptions: { parserOptions: { parser: ts.parser } } },
  {
    plugins: { boundaries },
    settings: {
      'import/resolver': {
        [fileURLToPath(new URL('data-scripts/entry/import-resolver.cjs', import.meta.url))]: {},
      },
      'boundaries/elements': [
        // Whole paths: tests mirror the rooms' names and must not be taken for them.
        ...rooms.map((room) => ({ type: room, partialMatch: false, pattern: `analysis/${room}` })),
        ...['web', 'data-scripts', 'tests'].map((type) => ({ type, partialMatch: false, pattern: type })),
      ],
    },
    rules: {
      'boundaries/no-unknown-dependencies': 'error',
      'boundaries/dependencies': [
        'error',
        {
          default: 'disallow',
          policies: [
            ...arrows,
            mayImport('web', rooms),
            mayImport('data-scripts', rooms),
            mayImport('tests', ['web', 'data-scripts', ...rooms]),
          ],
        },
      ],
    },
  },
  { files: ['**/*.cjs'], rules: { '@typescript-eslint/no-require-imports': 'off' } },
  {
    files: ['analysis/**'],
    rules: {
      'no-restricted-globals': [
        'error',
        'document',
        'window',
        'fetch',
        'process',
        'localStorage',
        'performance',
      ],
      'no-restricted-imports': [
        'error',
        { patterns: ['node:*', 'fs', 'path', '@duckdb/*', 'svelte', 'maplibre-gl'] },
      ],
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'random', message: 'Pass a seeded generator in.' },
        { object: 'Date', property: 'now', message: 'analysis reads no clock.' },
      ],
      'no-restricted-syntax': [
        'error',
        {
          selector: 'NewExpression[callee.name="Date"][arguments.length=0]',
          message: 'analysis reads no clock.',
        },
      ],
    },
  },
);
