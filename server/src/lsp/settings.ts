/** The client's settings of the section `plumule`, each taken only where it has the right type. */
import type { HintKinds } from '../features/inlay.ts';
import { problemKinds, type ProblemCode } from '../model/problems.ts';
import type { LimitSettings } from '../journal/settings.ts';
import type { Moment } from '../journal/moment.ts';
import { momentOf } from './clock.ts';
import type { SeveritySettings } from './publisher.ts';

/** What is shown between and behind the lines. */
interface Shown {
  readonly hints: HintKinds;
  readonly lens: { readonly lots: boolean; readonly changes: boolean };
  readonly hovers: { readonly photos: boolean; readonly pictures: boolean };
}

export interface Settings extends Shown {
  readonly limits: LimitSettings;
  readonly severity: SeveritySettings;
  /** Whether the formatter puts facts in the order in which the format reference lists them. */
  readonly format: { readonly factOrder: boolean };
  /** What there is to measure with, as typed, and how far reading it may be off, in percent. */
  readonly mix: { readonly tools: readonly string[]; readonly tolerance: number | undefined };
  /** A day to judge the journal by in place of the present one. */
  readonly asOf: Moment | undefined;
}

export function readSettings(section: unknown): Settings {
  const root = objectOf(section);
  const limits = objectOf(root.limits);
  const hints = objectOf(root.hints);
  const lens = objectOf(root.lens);
  const hovers = objectOf(root.hovers);
  const mix = objectOf(root.mix);
  const asOf = root.asOf;
  return {
    limits: {
      soakHours: numberOf(limits.soakHours),
      stockYears: numberOf(limits.stockYears),
      countDays: numberOf(limits.countDays),
      strengths: textsOf(objectOf(limits.strengths)),
    },
    severity: severityOf(objectOf(objectOf(root.problems).severity)),
    format: { factOrder: objectOf(root.format).factOrder === true },
    hints: {
      counts: hints.counts !== false, soaks: hints.soaks !== false, stages: hints.stages !== false,
      stocks: hints.stocks !== false,
    },
    lens: { lots: lens.lots !== false, changes: lens.changes !== false },
    hovers: { photos: hovers.photos !== false, pictures: hovers.pictures !== false },
    mix: {
      tools: Array.isArray(mix.tools) ? mix.tools.filter(tool => typeof tool === 'string') : [],
      tolerance: numberOf(mix.tolerance),
    },
    asOf: typeof asOf === 'string' ? momentOf(asOf) : undefined,
  };
}

const levels = ['error', 'warning', 'information', 'hint', 'off'] as const;

function severityOf(given: Readonly<Record<string, unknown>>): SeveritySettings {
  const severity: Partial<Record<ProblemCode, (typeof levels)[number]>> = {};
  for (const [code, level] of Object.entries(given)) {
    const known = levels.find(l => l === level);
    if (known && Object.hasOwn(problemKinds, code)) severity[code as ProblemCode] = known;
  }
  return severity;
}

function objectOf(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value) ? value as Record<string, unknown> : {};
}

function textsOf(given: Readonly<Record<string, unknown>>): Readonly<Record<string, string>> {
  const texts = Object.entries(given).filter((pair): pair is [string, string] => typeof pair[1] === 'string');
  return Object.fromEntries(texts);
}

function numberOf(value: unknown): number | undefined {
  return typeof value === 'number' && Number.isFinite(value) ? value : undefined;
}
