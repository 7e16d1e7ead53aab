import { execFileSync } from 'node:child_process';
import { expect, test } from 'vitest';
import { lateCompiling } from '../../server/src/disk/compiler.ts';

test('the engine that runs here knows the flag that is set for it', () => {
  const flag = lateCompiling(process.versions.v8);
  const name = flag?.split('=')[0];
  expect(name === undefined || execFileSync(process.execPath, ['--v8-options'], { encoding: 'utf8' }).includes(`${name} `)).toBe(true);
});

test('an engine is told only what its version was tried with', () => {
  expect(['11.3.244.8-node.38', '12.4.254.21-node.57', '14.1.146.11-node.25'].map(lateCompiling)).toEqual([
    '--interrupt-budget=500000', '--invocation-count-for-turbofan=10000', '--invocation-count-for-turbofan=10000',
  ]);
  expect(['9.4.146.26-node.26', '12.4.254.20-electron.0', '15.0.1', ''].map(lateCompiling)).toEqual([
    undefined, undefined, undefined, undefined,
  ]);
});
