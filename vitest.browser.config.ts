import { defineConfig } from 'vitest/config';

/** They measure: one after another, and nothing beside them. */
const MEASURING = ['click-to-ranking', 'first-screen', 'surface', 'yard-repaint'].map(
  (name) => `tests/browser/${name}.test.ts`,
);

/** Tests that drive Chromium against the built page, served as `npm start` serves it. */
export default defineConfig({
  test: {
    globalSetup: ['tests/browser/serve-built-page.ts'],
    testTimeout: 60_000,
    hookTimeout: 60_000,
    // A second, as it is unless told, is short where drawing is done in software.
    expect: { poll: { timeout: 10_000 } },
    pool: 'forks',
    projects: [
      {
        extends: true,
        test: {
          name: 'measuring',
          include: MEASURING,
          maxWorkers: 1,
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        test: {
          name: 'others',
          include: ['tests/browser/**/*.test.ts'],
          exclude: MEASURING,
          maxWorkers: 2,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
