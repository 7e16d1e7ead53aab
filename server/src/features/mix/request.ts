/** From what somebody typed to the question for the planner. The command line and the editor ask alike. */
import type { MixRequest, MixSource } from '../../solutions/mix-plan.ts';
import type { Agent } from '../../solutions/agent.ts';
import { wordFor } from '../../solutions/agent-names.ts';
import { nearest } from '../../syntax/nearest.ts';
import { quantityOf } from '../../syntax/quantity-text.ts';

/** Each as typed, in the units of the journal; what was left out or empty was not said. */
export interface MixTexts {
  readonly agent?: string | undefined;
  readonly strength?: string | undefined;
  readonly volume?: string | undefined;
  /** The strength of the stock it is made from. */
  readonly from?: string | undefined;
  /** The mass of the packet that is halved by eye. */
  readonly packet?: string | undefined;
  /** How often. */
  readonly halved?: string | undefined;
  /** Of the powder, in percent; `acid` or `salt` may follow. */
  readonly purity?: string | undefined;
}

export type MixField = keyof MixTexts;

/** What cannot be understood, with what to do about it. */
export type MixProblems = Partial<Readonly<Record<MixField, string>>>;

export type Asked =
  | { readonly ok: true; readonly request: Pick<MixRequest, 'agent' | 'strength' | 'volume' | 'source'> }
  /** `problems` are of what was typed; it has none where something is not typed yet. */
  | { readonly ok: false; readonly problems: MixProblems };

const MOST_HALVINGS = 20;

export function askedFor(texts: MixTexts, agents: ReadonlyMap<string, Agent>): Asked {
  const problems: Partial<Record<MixField, string>> = {};
  const said = (field: MixField) => {
    const text = texts[field]?.trim();
    return text === '' ? undefined : text;
  };
  const read = <What extends 'strength' | 'volume' | 'mass' | 'purity'>(field: MixField, what: What) => {
    const text = said(field);
    if (text === undefined) return undefined;
    const quantity = quantityOf(what, text);
    if (!quantity.ok) problems[field] = quantity.message;
    return quantity.ok ? quantity.value : undefined;
  };
  const word = said('agent');
  const agent = word === undefined ? undefined : agents.get(word);
  if (word !== undefined && !agent) problems.agent = unknownAgent(word, agents);
  const strength = read('strength', 'strength');
  const volume = read('volume', 'volume');
  const from = read('from', 'strength');
  const mass = read('packet', 'mass');
  const purity = read('purity', 'purity');
  const halved = said('halved') === undefined ? undefined : Number(said('halved'));
  if (halved !== undefined && !(Number.isInteger(halved) && halved >= 0 && halved <= MOST_HALVINGS)) {
    problems.halved = `Write how often you halve the packet: a whole number from 0 to ${MOST_HALVINGS}.`;
  }
  if (said('from') !== undefined) {
    for (const field of ['packet', 'purity'] as const) {
      if (said(field) !== undefined) problems[field] = 'A solution is made from a stock or from powder, not from both.';
    }
  }
  if (halved !== undefined && said('packet') === undefined) problems.halved = 'Say how much powder the packet holds.';
  if (Object.keys(problems).length > 0 || !agent || !strength || !volume) return { ok: false, problems };
  const source: MixSource = from ? { kind: 'stock', strength: from }
    : mass ? { kind: 'packet', mass, halved, purity }
      : { kind: 'powder', purity };
  return { ok: true, request: { agent, strength, volume, source } };
}

function unknownAgent(word: string, agents: ReadonlyMap<string, Agent>): string {
  const near = wordFor(word, agents) ?? nearest(word, agents.keys());
  const known = [...agents.keys()].filter(each => each !== 'water');
  return `“${word}” is not an agent. ${near === undefined ? `Plumule knows ${known.join(', ')}.` : `Did you mean “${near}”?`}`;
}
