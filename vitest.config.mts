import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['test/**/*.test.ts'],
    exclude: ['test/editor/**'],
    // Two cores are what the build machines have.
    pool: 'threads',
    maxWorkers: 2,
    // The rooms keep nothing but what hangs on the identity of a tree, so files can share them.
    isolate: false,
    // A busy machine must not fail a test; one that hangs still ends.
    testTimeout: 30_000,
    hookTimeout: 30_000,
  },
});
