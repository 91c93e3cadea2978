import boundaries from 'eslint-plugin-boundaries';
import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import ts from 'typescript-eslint';

/** Rooms of `analysis`, lowest first: a room may import itself and the rooms of lower floors. */
const FLOORS = [
  ['math', 'units'],
  ['records'],
  ['read', 'clean'],
  ['night'],
  ['winter', 'extremes'],
  ['place'],
  ['tree'],
  ['spot', 'cover'],
  ['answer'],
];

const rooms = FLOORS.flat();
const arrows = FLOORS.flatMap((floor, level) =>
  floor.map((room) => ({
    from: { type: room },
    allow: { to: { type: [room, ...FLOORS.slice(0, level).flat()] } },
  })),
);

export default ts.config(
  { ignores: ['dist/', '.cache/', 'packs/', 'node_modules/', '.svelte-kit/'] },
  ...ts.configs.recommended,
  ...svelte.configs.recommended,
  { languageOptions: { globals: { ...globals.browser, ...globals.node } } },
  { files: ['**/*.svelte', '**/*.svelte.ts'], languageOptions: { parserOptions: { parser: ts.parser } } },
  {
    plugins: { boundaries },
    settings: {
      'import/resolver': { typescript: false, node: { extensions: ['.ts', '.svelte', '.js'] } },
      'boundaries/elements': [
        ...rooms.map((room) => ({ type: room, pattern: `analysis/${room}` })),
        { type: 'web', pattern: 'web' },
        { type: 'data-scripts', pattern: 'data-scripts' },
        { type: 'tests', pattern: 'tests' },
      ],
    },
    rules: {
      'boundaries/dependencies': [
        'error',
        {
          default: 'disallow',
          rules: [
            ...arrows,
            { from: { type: 'web' }, allow: { to: { type: ['web', ...rooms] } } },
            { from: { type: 'data-scripts' }, allow: { to: { type: ['data-scripts', ...rooms] } } },
            { from: { type: 'tests' }, allow: { to: { type: ['tests', 'web', 'data-scripts', ...rooms] } } },
          ],
        },
      ],
    },
  },
  {
    files: ['analysis/**'],
    rules: {
      'no-restricted-globals': ['error', 'document', 'window', 'fetch', 'process', 'localStorage', 'performance'],
      'no-restricted-imports': ['error', { patterns: ['node:*', 'fs', 'path', '@duckdb/*', 'svelte', 'maplibre-gl'] }],
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'random', message: 'Pass a seeded generator in.' },
        { object: 'Date', property: 'now', message: 'analysis reads no clock.' },
      ],
    },
  },
);
