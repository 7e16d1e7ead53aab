import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: ['tests/editor/*.test.mjs'],
    globalSetup: ['tests/editor/global.mjs'],
    fileParallelism: false,
    // Above the 30 s after which any single step in the editor gives up and says which one it was.
    testTimeout: 180_000,
    // A whole desktop in a browser on two busy cores: what fails twice is wrong.
    retry: 1,
    hookTimeout: 180_000,
    teardownTimeout: 20_000,
  },
});
