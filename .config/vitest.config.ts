import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { compileLate, lateCompiling } from '../server/src/disk/compiler.ts';

// A zone whose summer time begins at midnight: a calendar day kept as a local Date fails here. Threads have the zone
// of their process, whatever their own environment says.
process.env.TZ = 'America/Santiago';

// Like the programs themselves, tests run much code a few times. What is set here holds for threads; processes get the
// flag.
compileLate();
const flag = lateCompiling(process.versions.v8);

/** Tests that change what a process has once only: its current folder, its output, its exit code. */
const OF_A_PROCESS = ['tests/cli/**/*.test.ts'];

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    // Each worker loads the core once and takes one file after the other: no file may leave anything changed behind.
    isolate: false,
    // One worker for each core; the process that gives out the files has next to nothing to do.
    maxWorkers: '100%',
    // For what hangs: on a busy machine what takes a second alone can take half a minute.
    testTimeout: 120_000,
    setupFiles: ['tests/support/seed.ts'],
    projects: [
      {
        extends: true,
        test: {
          name: 'core',
          pool: 'threads',
          include: ['tests/**/*.test.ts'],
          // Those of the editor need a real one and have a runner of their own: tests/editor/run.mjs.
          exclude: ['tests/editor/**', '**/node_modules/**', ...OF_A_PROCESS],
        },
      },
      {
        extends: true,
        test: { name: 'process', pool: 'forks', include: OF_A_PROCESS, execArgv: flag === undefined ? [] : [flag] },
      },
    ],
  },
});
