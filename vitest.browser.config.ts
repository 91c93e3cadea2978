import { defineConfig } from 'vitest/config';

/** Tests that drive Chromium against the built page, served as `npm start` serves it. One file at a time: they measure. */
export default defineConfig({
  test: {
    include: ['tests/browser/**/*.test.ts'],
    globalSetup: ['tests/browser/serve-built-page.ts'],
    testTimeout: 60_000,
    hookTimeout: 60_000,
    // A second, as it is unless told, is short where drawing is done in software.
    expect: { poll: { timeout: 10_000 } },
    pool: 'forks',
    fileParallelism: false,
  },
});
