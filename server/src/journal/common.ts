/** What holds for the whole journal: the agents it knows, its zone, its limits. */
import { factOf } from '../model/record.ts';
import type { Agent } from '../solutions/agent.ts';
import { builtInAgents } from '../solutions/agents.ts';
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
  let zone: { readonly is: string | undefined } | undefined;
  return {
    agents: agentsWith(linesOf('agent').flatMap(declarationOf)),
    // The first zone that is looked up takes a while, and to read a journal none is needed.
    get zone() {
      zone ??= { is: zones.find(name => name !== undefined && isZone(name)) };
      return zone.is;
    },
    limits: new Limits(linesOf('limit'), settings),
    guides: new Guides(linesOf('guide')),
    lines: linesOf,
  };
}

/** Whether the zone may be another one; the first record of one is taken for that, without looking the zone up. */
export function isOtherZone(before: Common, now: Common): boolean {
  const [old, fresh] = [before.lines('zone').length, now.lines('zone').length];
  return old === 0 || fresh === 0 ? old !== fresh : before.zone !== now.zone;
}

/** An agent that needs no declaration is not named by what uses it, as a word of one's own is. */
export function redefinesAgent({ content: { record } }: JournalLine): boolean {
  return record?.keyword === 'agent' && builtInAgents.has(record.subject?.text ?? '');
}

function declarationOf({ content: { record } }: JournalLine): Parameters<typeof agentsWith>[0][number][] {
  if (!record?.subject) return [];
  return [{
    word: record.subject.text, molarMass: factOf(record, 'molarMass')?.value.value,
    solubility: factOf(record, 'solubility')?.value, text: factOf(record, 'text')?.value.text,
  }];
}
