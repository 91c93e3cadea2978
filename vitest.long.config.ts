import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

/** Soak and full fuzz runs: `npm run test:long`. */
export default defineConfig({
  plugins: [svelte()],
  test: {
    include: ['tests/long/**/*.test.ts'],
    globalSetup: ['tests/browser/serve-built-page.ts'],
    expect: { poll: { timeout: 10_000 } },
    testTimeout: 1_800_000,
    hookTimeout: 120_000,
    pool: 'forks',
    fileParallelism: false,
  },
});
