import { version } from '../../../package.json';
import { stagesOf, type RegimeStage } from '../calendar/regime-match.ts';
import { guideSoaks, ownLeafDays, when as planned, type Fixed, type WhenAsked } from '../calendar/when.ts';
import type { Journal } from '../journal/journal.ts';
import type { Moment } from '../journal/moment.ts';
import { present } from '../lsp/clock.ts';
import { isUndefined } from '../measures/measured.ts';
import type { Duration } from '../model/quantity.ts';
import { factOf } from '../model/record.ts';
import { printableJson } from '../report/printable.ts';
import { whenData, WHEN_SHAPE } from '../report/when-data.ts';
import { whenText } from '../report/when-text.ts';
import { parse } from '../syntax/parse.ts';
import { exits, type Exit } from './exits.ts';
import { openJournals, type OpenJournal } from './open.ts';
import { complain, complainOf, outputPage, print } from './output.ts';
import { unknownName } from './unknown.ts';
import type { textFormats } from './program/choices.ts';

export interface WhenOptions {
  readonly format: (typeof textFormats)[number];
  readonly endsBy?: Moment;
  readonly leavesBy?: Moment;
  readonly sown?: Moment;
  readonly plant?: string;
  readonly leaf?: number;
  readonly soak?: string;
  readonly today?: Moment;
}

/** `plumule when`: when to begin a regime for a wanted day, or when it ends. */
export async function when(regime: string, paths: readonly string[], options: WhenOptions): Promise<Exit> {
  const soak = options.soak === undefined ? undefined : durationIn(options.soak);
  if (options.soak !== undefined && !soak) {
    complain(`--soak: “${options.soak}” is not a length of time such as “24 h”`);
    return exits.unread;
  }
  const written = /\s/.test(regime);
  // Stages that are written out need no journal, but for the records of a plant.
  const isNeeded = !written || paths.length > 0 || options.plant !== undefined;
  const { journals, unread } = isNeeded ? await openJournals(paths, options.today) : { journals: [], unread: [] };
  complainOf(unread);
  const found = written ? { stages: stagesIn(regime), opened: journals[0] } : regimeIn(journals, regime);
  if (!found?.stages) {
    if (written) complain(`“${regime}” is not a list of stages such as “chill 4 C 90 days, warm 18 C 60 days”${faultIn(regime)}`);
    return exits.unread;
  }
  const now = options.today ?? found.opened?.now ?? present(undefined);
  const plan = planned({ stages: found.stages, soak, today: now.day, ...aimOf(options, found.opened?.journal, now) });
  const soaks = soak || !found.opened ? [] : guideSoaks(found.opened.journal, options.plant);
  if (options.format === 'text') print(whenText(regime, plan, soaks, outputPage()));
  else print(printableJson({ version: WHEN_SHAPE, plumule: version, regime, ...whenData(plan, soaks), unread }));
  if (unread.length > 0) return exits.unread;
  return isUndefined(plan.schedule) ? exits.problems : exits.clean;
}

function aimOf(options: WhenOptions, journal: Journal | undefined, now: Moment): Pick<WhenAsked, 'fixed' | 'leaf'> {
  const { endsBy, leavesBy, sown, plant, leaf } = options;
  const fixed: Fixed = leavesBy ? { by: 'leaf', day: leavesBy.day }
    : endsBy ? { by: 'end', day: endsBy.day }
    : sown ? { by: 'sowing', day: sown.day } : { by: 'start', day: now.day };
  if (leaf !== undefined) return { fixed, leaf: { days: leaf, own: undefined } };
  return { fixed, leaf: leavesBy || plant !== undefined ? ownLeafDays(journal, plant) : undefined };
}

interface FoundRegime {
  readonly stages: readonly RegimeStage[] | undefined;
  readonly opened: OpenJournal | undefined;
}

/** Undefined, and complained about, where no journal or more than one has it. */
function regimeIn(journals: readonly OpenJournal[], name: string): FoundRegime | undefined {
  const found = journals.flatMap(opened => {
    const definition = opened.journal.definitionsOf(name).find(({ record }) => record.keyword === 'regime');
    return definition ? [{ stages: stagesOf(definition.record), opened }] : [];
  });
  if (found.length === 1) return found[0];
  if (found.length > 1) {
    complain(`more than one journal has a regime “${name}” (${found.map(({ opened }) => opened.folder).join(', ')}): name one of them`);
  } else if (journals.length > 0) {
    complain(unknownName('regime', name, journals.flatMap(({ journal }) => (
      journal.definedIds().filter(id => journal.kindOf(id) === 'regime')))));
  }
  return undefined;
}

function stagesIn(text: string): RegimeStage[] | undefined {
  const { record, problems } = parse(`regime x, ${text}`);
  const stages = record && problems.length === 0 ? stagesOf(record) : [];
  return stages.length > 0 ? stages : undefined;
}

/** What is wrong with the first of them, where that can be said. */
function faultIn(text: string): string {
  const [problem] = parse(`regime x, ${text}`).problems;
  return problem ? `: ${problem.message}` : '';
}

function durationIn(text: string): Duration | undefined {
  const { record, problems } = parse(`chill x 2026-01-01, ${text}`);
  return record && problems.length === 0 && record.facts.length === 1 ? factOf(record, 'duration')?.value : undefined;
}
