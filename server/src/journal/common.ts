/** What holds for the whole journal: the agents it knows, its zone, its limits. */
import { factOf } from '../model/record.ts';
import type { Agent } from '../solutions/agent.ts';
import { agentsWith } from '../solutions/declared-agents.ts';
import { inJournalOrder, type JournalLine } from './journal-file.ts';
import type { Keyword } from '../model/keywords.ts';
import { Guides } from './guides.ts';
import { Limits } from './limits.ts';
import type { LimitSettings } from './settings.ts';
import { isZone } from './zone.ts';

export interface Common {
  readonly agents: ReadonlyMap<string, Agent>;
  /** Undefined where none is named or the name is no zone. */
  readonly zone: string | undefined;
  readonly limits: Limits;
  readonly guides: Guides;
  /** The records of a keyword that hold for the whole journal, in its order. */
  readonly lines: (keyword: Keyword) => readonly JournalLine[];
}

export function commonOf(lines: Iterable<JournalLine>, settings: LimitSettings): Common {
  const byKeyword = new Map<Keyword, JournalLine[]>();
  for (const line of inJournalOrder(lines)) {
    const { keyword } = line.content.record!;
    const same = byKeyword.get(keyword);
    if (same) same.push(line);
    else byKeyword.set(keyword, [line]);
  }
  const linesOf = (keyword: Keyword) => byKeyword.get(keyword) ?? [];
  const zones = linesOf('zone').map(({ content }) => content.record?.subject?.text);
  return {
    agents: agentsWith(linesOf('agent').flatMap(declarationOf)),
    zone: zones.find(name => name !== undefined && isZone(name)),
    limits: new Limits(linesOf('limit'), settings),
    guides: new Guides(linesOf('guide')),
    lines: linesOf,
  };
}

function declarationOf({ content: { record } }: JournalLine): Parameters<typeof agentsWith>[0][number][] {
  if (!record?.subject) return [];
  return [{
    word: record.subject.text, molarMass: factOf(record, 'molarMass')?.value.value,
    solubility: factOf(record, 'solubility')?.value, text: factOf(record, 'text')?.value.text,
  }];
}
