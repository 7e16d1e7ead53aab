/** How much of an agent a powder holds. */
import type { Agent } from './agent.ts';
import { saltOf } from './agents.ts';
import { type Exact, exact } from './amounts.ts';
import { type Assumption, assumption, readingsOf } from './assumptions.ts';
import { percentText } from './display.ts';
import { known, type Outcome, refused } from './outcome.ts';

export interface Purity {
  readonly percent: number;
  /** What the percentage is of, where the label says so; left out, of the agent as named. */
  readonly form?: 'acid' | 'salt' | undefined;
}

export interface Content {
  /** mg of the agent as named in 1 mg of powder */
  readonly share: Exact;
  readonly assumptions: readonly Assumption[];
}

/**
 * The share of an agent in a powder. Without a purity it is 1, which is said. A percentage of the other
 * form, acid or salt, is converted by molar mass.
 */
export function contentOf(agent: Agent, purity: Purity | undefined): Outcome<Content> {
  if (purity === undefined) {
    return known({ share: exact(1), assumptions: [assumption('purity-not-given'), ...readingsOf(agent)] });
  }
  const { percent, form } = purity;
  if (!(percent > 0 && percent <= 100)) {
    return refused('bad-purity', `A purity of ${percent} % is impossible: write more than 0 % and at most 100 %.`);
  }
  const written = exact(percent).div(100);
  const [share, read] = inFormOf(agent, written, form);
  if (share.gt(1)) {
    return refused('bad-purity', `${percent} % of acid would need ${percentText(share)} of ${agent.word}: give the purity of the salt.`);
  }
  return known({ share, assumptions: [read, ...readingsOf(agent)] });
}

function inFormOf(agent: Agent, written: Exact, form: Purity['form']): [Exact, Assumption] {
  const salt = saltOf(agent);
  if (form === 'salt' && salt?.acid !== undefined) {
    const share = written.mul(salt.acid.perSalt);
    const text = `${percentText(written)} is of the salt ${salt.word}, which holds ${percentText(share)} of ${agent.word}.`;
    return [share, { id: 'purity-of-salt', text }];
  }
  if (form === 'acid' && agent.acid !== undefined) {
    const share = written.div(agent.acid.perSalt);
    const text = `${percentText(written)} is of the acid ${agent.acid.word}, which is ${percentText(share)} of ${agent.word}.`;
    return [share, { id: 'purity-of-acid', text }];
  }
  return [written, {
    id: 'purity-is-of-agent',
    text: `${percentText(written)} counts as the share of ${agent.word} itself in the powder.`,
  }];
}
