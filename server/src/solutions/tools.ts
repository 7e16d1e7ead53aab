/**
 * Scales and measures of the bench and how fine they are. Smallest steps as the tools are commonly sold; that
 * a mass should be ten steps or more and a volume twenty, so that rounding moves it by 5 % and 2.5 % at most:
 * common practice, no source.
 */
import { type Exact, exact } from './amounts.ts';
import { showMass, showVolume } from './display.ts';

export type ToolId =
  | 'kitchen-scale'
  | 'tenth-gram-scale'
  | 'hundredth-gram-scale'
  | 'milligram-balance'
  | 'analytical-balance'
  | 'measuring-jug'
  | 'large-syringe'
  | 'small-syringe'
  | 'weighed-water'
  | 'cylinder'
  | 'micropipette';

export interface Tool {
  readonly id: ToolId;
  readonly name: string;
  readonly measures: 'mass' | 'volume';
  /** The smallest step that can be read, in mg or mL. */
  readonly step: Exact;
  /** What it can measure at most in a few fillings, in mg or mL. */
  readonly most: Exact;
  /** Whether a kitchen has it, or a laboratory only. */
  readonly bench: Bench;
}

/** What there is to measure with; a laboratory has the tools of a kitchen too. */
export type Bench = 'kitchen' | 'laboratory';

/** Steps that an amount must have for a tool to measure it. */
const FEWEST_STEPS = { mass: 10, volume: 20 } as const;

function tool(
  id: ToolId, name: string, measures: Tool['measures'], step: number, most: number, bench: Bench,
): Tool {
  return { id, name, measures, step: exact(step), most: exact(most), bench };
}

/** In the order in which a hand reaches for them, the finest last. */
const tools: readonly Tool[] = [
  tool('kitchen-scale', 'a kitchen scale that shows 1 g', 'mass', 1000, 5e6, 'kitchen'),
  tool('tenth-gram-scale', 'a scale that shows 0.1 g', 'mass', 100, 5e5, 'kitchen'),
  tool('hundredth-gram-scale', 'a scale that shows 0.01 g', 'mass', 10, 2e5, 'kitchen'),
  tool('milligram-balance', 'a balance that shows 1 mg', 'mass', 1, 5e4, 'laboratory'),
  tool('analytical-balance', 'a balance that shows 0.1 mg', 'mass', 0.1, 2e4, 'laboratory'),
  tool('measuring-jug', 'a measuring jug marked every 10 mL', 'volume', 10, 1e4, 'kitchen'),
  tool('cylinder', 'a 100 mL measuring cylinder', 'volume', 0.5, 500, 'laboratory'),
  tool('large-syringe', 'a 10 mL syringe marked every 0.2 mL', 'volume', 0.2, 50, 'kitchen'),
  tool('weighed-water', 'a scale that shows 1 g, taking 1 g as 1 mL', 'volume', 1, 5000, 'kitchen'),
  tool('small-syringe', 'a 1 mL syringe marked every 0.01 mL', 'volume', 0.01, 5, 'kitchen'),
  tool('micropipette', 'a micropipette that measures 1 µL', 'volume', 0.001, 1, 'laboratory'),
];

/** The tools of a bench for one kind of amount, the handiest first and the finest last. */
export function toolsFor(measures: Tool['measures'], bench: Bench): Tool[] {
  return tools.filter(t => t.measures === measures && (bench === 'laboratory' || t.bench === 'kitchen'));
}

/** The least that a tool measures well, in mg or mL. */
export function leastOf({ step, measures }: Tool): Exact {
  return step.mul(FEWEST_STEPS[measures]);
}

/** Example: leastText of a 0.01 g scale is '100 mg' */
export function leastText(t: Tool): string {
  const least = leastOf(t);
  return (t.measures === 'mass' ? showMass(least) : showVolume(least)).text;
}
