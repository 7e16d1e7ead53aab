import type { Journal } from '../journal/journal.ts';
import type { Dose } from '../journal/life.ts';
import { eventColumns } from './events.ts';
import { recordsOf, type EventRecord } from './records.ts';
import { massInMg, volumeInMl } from '../solutions/amounts.ts';
import { toNumber } from '../solutions/display.ts';
import type { Purity } from '../solutions/purity.ts';
import { factOf, type DrawFact, type SubstanceFact } from '../model/record.ts';
import { strengthOfDose, strengthOfSolution, type Strength } from './strengths.ts';
import { purityColumns } from './purity.ts';
import { between, map, number, table, text, whole, yes } from './table.ts';

/** An agent in a liquid: of a soak, of drops, or in a bottle. */
interface DoseRow {
  readonly of: EventRecord;
  /** From 1. */
  readonly number: number;
  readonly agent: string | undefined;
  readonly name: string;
  readonly stock: string | undefined;
  readonly strength: Strength;
  readonly unmeasured: boolean;
  /** What the record says of how it was taken. */
  readonly taken: Pick<SubstanceFact | DrawFact, 'volume' | 'mass' | 'halved'> | undefined;
  readonly purity: Purity | undefined;
}

export const doses = table<DoseRow>(
  {
    name: 'doses',
    says: 'A row for each agent in a soak or in drops, with its strength in the whole liquid, and for each stock.',
    key: ['file', 'line', 'dose'], references: [{ columns: ['journal', 'file', 'line'], table: 'events' }],
  },
  [
    ...eventColumns.map(({ cell, ...field }) => ({ ...field, cell: ({ of }: DoseRow) => cell(of) })),
    whole('dose', 'Its number in the record, from 1.', each => each.number),
    text('name', 'The agent or the stock as recorded.', ({ name }) => name),
    text('agent', 'The agent.', ({ agent }) => agent),
    text('stock', 'The stock or the packet of powder that all of it came from.', ({ stock }) => stock),
    number('strength_ppm', 'Its strength in ppm, if that is known: mg in 1 L, or for a liquid by volume µL in 1 L.', ({ strength: { least, most } }) => (
      least === most ? least : undefined)),
    ...between<DoseRow>('strength_ppm', 'Its strength in ppm', ({ strength }) => strength),
    number('taken_ml', 'Millilitres of the stock, or of a liquid agent, that went in, if the record says so.', ({ taken }) => (
      map(taken?.volume, ({ value }) => toNumber(volumeInMl(value))))),
    number('weighed_mg', 'Milligrams of powder that were weighed, before any halving by eye, if the record says so.', ({ taken }) => (
      map(taken?.mass, ({ value }) => toNumber(massInMg(value))))),
    whole('halved_times', 'How often that powder was halved by eye.', ({ taken }) => taken?.halved?.value),
    ...purityColumns<DoseRow>(({ purity }) => purity, 'the powder, from its record or its packet; empty where Plumule took it as 100 %'),
    yes('is_unmeasured', 'Whether the journal says that the dose was not measured.', ({ unmeasured }) => unmeasured),
  ],
  source => recordsOf(source).events.flatMap(dosesOf),
);

function dosesOf(of: EventRecord): DoseRow[] {
  const { entry, event, journal } = of;
  switch (entry.record.keyword) {
    case 'soak': case 'apply': {
      const found = event?.type === 'soak' ? event.soak.doses
        : event?.type === 'apply' ? event.doses : journal.dosesOf(entry);
      return found.map((dose, i) => ({ ...doseOf(dose, journal), of, number: i + 1 }));
    }
    case 'stock': case 'dilute': return stockOf(of);
    default: return [];
  }
}

function doseOf(dose: Dose, journal: Journal): Omit<DoseRow, 'of' | 'number'> {
  const { agent, fact, stock, unmeasured } = dose;
  const packet = stock === undefined ? undefined : journal.solution(stock);
  return {
    agent: agent?.word, name: fact.name.text, stock, strength: strengthOfDose(dose, journal), unmeasured, taken: fact,
    purity: packet?.form === 'powder' ? factOf(packet.entry.record, 'purity') : undefined,
  };
}

function stockOf(of: EventRecord): DoseRow[] {
  const { journal, entry, entry: { record } } = of;
  const solution = record.subject && journal.solution(record.subject.text);
  if (solution?.entry.line !== entry.line) return [];
  const draw = factOf(record, 'draw');
  const { id, agent, weighed } = solution;
  const strength = strengthOfSolution(solution, journal);
  return [{
    of, number: 1, agent: agent?.word, name: id, stock: draw?.stock.text, strength,
    unmeasured: false, taken: draw ?? factOf(record, 'substance'), purity: weighed?.purity,
  }];
}
