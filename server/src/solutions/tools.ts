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
  | 'micropipette'
  | 'own-scale'
  | 'own-measure';

export interface Tool {
  readonly id: ToolId;
  readonly name: string;
  readonly measures: 'mass' | 'volume';
  /** The smallest step that can be read, in mg or mL. */
  readonly step: Exact;
  /** What it holds at once, in mg or mL. */
  readonly holds: Exact;
  /** What it can measure at most in a few fillings, in mg or mL. */
  readonly most: Exact;
  /** Whether a kitchen has it, or a laboratory only. */
  readonly bench: 'kitchen' | 'laboratory';
  /** Steps that an amount must have, where the grower said how closely it is to be measured. */
  readonly fewest?: Exact;
}

/**
 * What there is to measure with: a laboratory has the tools of a kitchen too. A grower's own tools take the place of
 * those of the kitchen that measure the same kind of amount.
 */
export type Bench = 'kitchen' | 'laboratory' | OwnBench;

export interface OwnBench {
  readonly tools: readonly Tool[];
  readonly base: 'kitchen' | 'laboratory';
  /** How far an amount may be off by reading the tool, as a share of it; undefined: as is common. */
  readonly tolerance: Exact | undefined;
}

/** Steps that an amount must have for a tool to measure it. */
const FEWEST_STEPS = { mass: 10, volume: 20 } as const;

function scale(id: ToolId, name: string, step: number, holds: number, bench: Tool['bench']): Tool {
  return { id, name, measures: 'mass', step: exact(step), holds: exact(holds), most: exact(holds), bench };
}

function vessel(id: ToolId, name: string, step: number, holds: number, most: number, bench: Tool['bench']): Tool {
  return { id, name, measures: 'volume', step: exact(step), holds: exact(holds), most: exact(most), bench };
}

/** In the order in which a hand reaches for them, the finest last. */
const tools: readonly Tool[] = [
  scale('kitchen-scale', 'a kitchen scale that shows 1 g', 1000, 5e6, 'kitchen'),
  scale('tenth-gram-scale', 'a scale that shows 0.1 g', 100, 5e5, 'kitchen'),
  scale('hundredth-gram-scale', 'a scale that shows 0.01 g', 10, 2e5, 'kitchen'),
  scale('milligram-balance', 'a balance that shows 1 mg', 1, 5e4, 'laboratory'),
  scale('analytical-balance', 'a balance that shows 0.1 mg', 0.1, 2e4, 'laboratory'),
  vessel('measuring-jug', 'a 1 L measuring jug marked every 10 mL', 10, 1000, 1e4, 'kitchen'),
  vessel('cylinder', 'a 100 mL measuring cylinder', 0.5, 100, 500, 'laboratory'),
  vessel('large-syringe', 'a 10 mL syringe marked every 0.2 mL', 0.2, 10, 50, 'kitchen'),
  vessel('weighed-water', 'a scale that shows 1 g, taking 1 g as 1 mL', 1, 5000, 5000, 'kitchen'),
  vessel('small-syringe', 'a 1 mL syringe marked every 0.01 mL', 0.01, 1, 5, 'kitchen'),
  vessel('micropipette', 'a micropipette that measures 1 µL', 0.001, 1, 1, 'laboratory'),
];

/** The tools of a bench for one kind of amount, the handiest first and the finest last. */
export function toolsFor(measures: Tool['measures'], bench: Bench): Tool[] {
  if (typeof bench === 'string') {
    return tools.filter(t => t.measures === measures && (bench === 'laboratory' || t.bench === 'kitchen'));
  }
  const own = bench.tools.filter(t => t.measures === measures).sort((a, b) => b.step.compare(a.step));
  const { tolerance } = bench;
  // Half a step is the most that reading it can be off.
  const fewest = tolerance && exact(0.5).div(tolerance);
  return (own.length > 0 ? own : toolsFor(measures, bench.base)).map(t => (fewest ? { ...t, fewest } : t));
}

/** The tools of a grower, or of a kitchen; what cannot be understood is left out. */
export function ownBench(texts: readonly string[], percent: number | undefined): Bench {
  if (texts.length === 0 && percent === undefined) return 'kitchen';
  const tolerance = percent !== undefined && percent > 0 && percent <= 50 ? exact(percent).div(100) : undefined;
  return { tools: texts.flatMap(text => toolOf(text) ?? []), base: 'kitchen', tolerance };
}

/**
 * A tool as a grower says it: a scale by its step, a measure by what it holds and its step; else undefined.
 *
 * Example: toolOf('0.01 g') shows hundredths of a gram; toolOf('5 mL by 0.1 mL') is a syringe or a cylinder
 */
export function toolOf(text: string): Tool | undefined {
  const mass = /^(\d+(?:\.\d+)?) ?(g|mg)$/.exec(text.trim());
  if (mass && Number(mass[1]) > 0) {
    const step = Number(mass[1]) * (mass[2] === 'g' ? 1000 : 1);
    return scale('own-scale', `your scale that shows ${mass[1]!} ${mass[2]!}`, step, step * 1e5, 'kitchen');
  }
  const volume = /^(\d+(?:\.\d+)?) ?mL by (\d+(?:\.\d+)?) ?mL$/i.exec(text.trim());
  const [holds, step] = [Number(volume?.[1]), Number(volume?.[2])];
  if (!volume || !(step > 0) || !(holds >= step)) return undefined;
  return vessel('own-measure', `your ${holds} mL measure marked every ${step} mL`, step, holds, holds * 5, 'kitchen');
}

/** The least that a tool measures well, in mg or mL. */
export function leastOf({ step, measures, fewest }: Tool): Exact {
  return step.mul(fewest ?? FEWEST_STEPS[measures]);
}

/** Example: leastText of a 0.01 g scale is '100 mg' */
export function leastText(t: Tool): string {
  const least = leastOf(t);
  return (t.measures === 'mass' ? showMass(least) : showVolume(least)).text;
}
