import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: ['tests/**/*.test.ts'],
    // These need a real editor and have a runner of their own: tests/editor/run.mjs.
    exclude: ['tests/editor/**', '**/node_modules/**'],
    environment: 'node',
    // Slow machines run several test files at once.
    testTimeout: 30_000,
    // A zone whose summer time begins at midnight: a calendar day kept as a local Date fails here.
    env: { TZ: 'America/Santiago' },
  },
});
