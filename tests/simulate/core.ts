/** What run.mjs simulates, bundled for it. */
import type { Cell } from './cell.ts';
import { dishes, weakSeedlings } from './cells/background.ts';
import { effects } from './cells/effects.ts';
import { messy } from './cells/messy.ts';
import { noEffect, peeking } from './cells/no-effect.ts';
import { plans } from './cells/plans.ts';
import { several } from './cells/several.ts';

export { columns, faultsOf, percent, run, standardError, together } from './cell.ts';

export { growers, habits, harvestFaults, harvestRows, runGrowers, saidRows } from './growers.ts';

export { coverages, INTERVALS, runCoverage } from './coverage.ts';

export const cells: readonly Cell[] = [
  ...noEffect, ...peeking, ...weakSeedlings, ...dishes, ...several, ...effects, ...plans, ...messy,
];
