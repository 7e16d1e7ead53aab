/** What is known of a substance that seed is treated with. */
import type { Strength } from '../model/quantity.ts';
import type { Exact } from './amounts.ts';
import type { Hazard } from './cautions.ts';

export type Role = 'hormone' | 'promoter' | 'disinfectant' | 'water' | 'declared';

/** Where a figure comes from. Only a figure that somebody vouches for refuses anything; the others warn. */
export type FigureSource =
  | { readonly kind: 'read' | 'journal'; readonly text: string }
  | { readonly kind: 'from memory' | 'common practice'; readonly text: string };

export interface Solubility {
  /** ppm (mg/L) in water at room temperature */
  readonly ppm: Exact;
  readonly source: FigureSource;
}

export interface DoseLimit {
  /** The agent that the limit speaks of; for a salt its acid. */
  readonly of: string;
  readonly strength: Strength;
  readonly source: FigureSource;
}

/** Strengths (ppm) of soaks and drops that growers use; outside it a unit was probably mistaken. */
export interface UsualRange {
  readonly low: Exact;
  readonly high: Exact;
}

export interface Agent extends Hazard {
  /** As written in a journal. */
  readonly word: string;
  readonly name: string;
  readonly formula: string | undefined;
  /** g/mol; undefined where the substance has none or none is known. */
  readonly molarMass: Exact | undefined;
  /** What has to be said when the molar mass is used. */
  readonly molarMassIs: 'computed' | 'mean of a mixture' | 'declared';
  readonly role: Role;
  /** Sold as powder that is weighed, or as liquid that is measured and diluted. */
  readonly form: 'powder' | 'liquid';
  /** Whether % is weight in volume, or a share of the liquid as bought in the volume. */
  readonly strengthIs: 'by weight' | 'by volume';
  readonly solubility: Solubility | undefined;
  readonly limit: DoseLimit | undefined;
  readonly usual: UsualRange | undefined;
  /** For a salt: the acid, and how much of it 1 mg of the salt stands for. */
  readonly acid: { readonly word: string; readonly perSalt: Exact } | undefined;
  /** A tight bottle of it may burst. */
  readonly givesOffGas: boolean;
  /** What keeping a solution of it needs, beyond cold and dark. */
  readonly keeping: string | undefined;
  /** The grower's own words, for an agent that the journal declares. */
  readonly remark: string | undefined;
}
