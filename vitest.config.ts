import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  plugins: [svelte()],
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/browser/**', 'tests/long/**', 'node_modules/**'],
    testTimeout: 60_000,
    pool: 'forks',
    // Files share a process and what it has loaded: no test leaves anything behind.
    isolate: false,
    // All cores: the default leaves one of two idle.
    maxWorkers: '100%',
  },
});
