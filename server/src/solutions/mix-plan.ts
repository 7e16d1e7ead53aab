/**
 * What the planner is asked and what it answers. An answer can be printed as JSON: its numbers are doubles at
 * full precision, in the unit beside them, and only texts are rounded.
 */
import type { Day } from '../model/day.ts';
import type { Mass, Strength, Volume } from '../model/quantity.ts';
import type { Agent } from './agent.ts';
import type { Assumption } from './assumptions.ts';
import type { Caution } from './cautions.ts';
import type { Shown } from './display.ts';
import type { RefusalCode } from './outcome.ts';
import type { StockRule } from './keeping.ts';
import type { Purity } from './purity.ts';
import type { Remedy } from './remedies.ts';
import type { LabelDates, Step } from './steps.ts';
import type { Bench, ToolId } from './tools.ts';

export type MixSource =
  | {
    readonly kind: 'powder';
    readonly purity?: Purity | undefined;
    /** The name of the packet, where steps are to say which. */
    readonly packet?: string | undefined;
  }
  | {
    readonly kind: 'packet';
    readonly mass: Mass;
    /** Left out: as often as still makes the volume, at most four times. */
    readonly halved?: number | undefined;
    readonly purity?: Purity | undefined;
  }
  | { readonly kind: 'stock'; readonly strength: Strength };

export interface MixRequest {
  readonly agent: Agent;
  readonly strength: Strength;
  readonly volume: Volume;
  readonly source: MixSource;
  /** What there is to measure with; a laboratory when left out. */
  readonly bench?: Bench | undefined;
  /** The dose limit that a warning goes by; the agent's own when left out. */
  readonly limit?: Strength | undefined;
  readonly dates?: LabelDates | undefined;
  readonly keeping?: MixKeeping | undefined;
}

/** What is known of how long the new bottle will keep. */
export interface MixKeeping {
  /** What holds for all stocks; the default when left out. */
  readonly rule?: StockRule | undefined;
  /** Left out, the label has no last day. */
  readonly today?: Day | undefined;
  /** The last good day of the stock that it is drawn from. */
  readonly sourceUntil?: Day | undefined;
}

/** An amount as worked out, and as the tool measures it. */
export interface PlannedAmount {
  readonly wanted: Shown;
  readonly measured: Shown;
  readonly tool: { readonly id: ToolId; readonly name: string };
}

export type MixWarningId =
  | 'above-limit' | 'short-soak' | 'unit-slip' | 'above-solubility' | 'stock-above-solubility' | 'past-date' | 'by-eye';

export interface MixWarning {
  readonly id: MixWarningId;
  readonly text: string;
}

/** Outer limits of the strength. */
export interface PlanLimits {
  readonly lowPpm: number;
  readonly highPpm: number;
  /** In the unit that was asked for. */
  readonly text: string;
  readonly counted: readonly string[];
  readonly notCounted: readonly string[];
}

export interface MixPlan {
  readonly possible: true;
  readonly method: 'powder' | 'packet' | 'dilution' | 'undiluted';
  readonly agent: { readonly word: string; readonly name: string };
  readonly asked: { readonly strength: Strength; readonly ppm: number; readonly volume: Volume };
  /** The strength asked for in the other units that it can be given in. */
  readonly sameAs: readonly Shown[];
  readonly amounts: {
    readonly powder?: PlannedAmount;
    readonly packet?: { readonly mass: Shown; readonly halved: number; readonly portion: Shown };
    /** The agent itself in the powder taken. */
    readonly pure?: Shown;
    readonly stock?: PlannedAmount;
    readonly water?: Shown;
    readonly makeUpTo: PlannedAmount;
    /** What is made beyond the volume asked for. */
    readonly leftOver?: Shown;
  };
  /** What the measures really give. */
  readonly result: {
    readonly ppm: number;
    readonly text: string;
    /** The result is so many percent above (below: negative) what was asked. */
    readonly offPercent: number;
    readonly limits: PlanLimits;
  };
  readonly steps: readonly Step[];
  /** For a laboratory's plan that a kitchen cannot follow: why, and what it can do. */
  readonly inKitchen: { readonly message: string; readonly remedies: readonly Remedy[] } | undefined;
  /** Other ways that are as good or better: a whole packet as a stock where the plan halves it by eye. */
  readonly alternatives: readonly Remedy[];
  readonly assumptions: readonly Assumption[];
  readonly warnings: readonly MixWarning[];
  readonly cautions: readonly Caution[];
}

/** What each way of making a solution adds to the parts that all plans have in common. */
export type PlannedWay = Omit<MixPlan, 'agent' | 'asked' | 'sameAs'>;

export interface MixRefusal {
  readonly possible: false;
  readonly agent: { readonly word: string; readonly name: string };
  readonly code: RefusalCode;
  readonly message: string;
  /** Likeliest first; may be empty. */
  readonly nearest: readonly Remedy[];
}

export type MixAnswer = MixPlan | MixRefusal;
