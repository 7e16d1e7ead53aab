/** Answers for whoever is asked step by step what solution is wanted: what can be chosen, what is wrong, the plan. */
import type { Journal } from '../../journal/journal.ts';
import { staleOn, type Solution } from '../../journal/solutions.ts';
import { isoOf, type Day } from '../../model/day.ts';
import type { Agent } from '../../solutions/agent.ts';
import { strengthSign } from '../../solutions/display.ts';
import type { MixPlan, MixRefusal, MixWarning } from '../../solutions/mix-plan.ts';
import { exact } from '../../solutions/amounts.ts';
import { strengthInPpm, usualStrength } from '../../solutions/strength.ts';
import type { Bench } from '../../solutions/tools.ts';
import { planMix } from '../../solutions/mix.ts';
import { isHeldByEye } from '../../words/held.ts';
import { changesFor, type ChangedAnswer } from './again.ts';
import { freeId, nextStockId, problemOfId } from './ids.ts';
import { mixHtml } from './page.ts';
import { recordOf } from './record.ts';
import { askedFor, type MixField, type MixTexts } from './request.ts';
import { onShelf, pastSince, shortOf, textsOf } from './shelf.ts';
import { mixText, mixTitle } from './text.ts';

/** As far as it has been asked by now; everything as typed. */
export interface MixQuestion extends MixTexts {
  /** The id of the journal's bottle or packet that it is made from, in place of `from` and `purity`. */
  readonly stock?: string | undefined;
  /** The name of the record to write. */
  readonly id?: string | undefined;
}

export interface MixReply {
  readonly agents: readonly { readonly word: string; readonly name: string; readonly liquid: boolean }[];
  /** The journal's bottles and packets of the agent that something is left of, with what is to know of each. */
  readonly stocks: readonly { readonly id: string; readonly text: string }[];
  readonly problems: Partial<Readonly<Record<MixField | 'stock' | 'id', string>>>;
  /** There once agent, strength and volume have been said and can be made. */
  readonly plan: MixPlan | undefined;
  /** There where they cannot. */
  readonly refusal: MixRefusal | undefined;
  /** After a refusal: the question to ask again, and an answer that can be made. */
  readonly again: ChangedAnswer | undefined;
  /** Either of them in words; empty as long as there is none. */
  readonly title: string;
  readonly text: string;
  readonly html: string;
  /** A name that is free, and the record with the name asked for or with that one. */
  readonly id: string | undefined;
  readonly record: string | undefined;
}

export function mixAnswer(question: MixQuestion, journal: Journal, today: Day, bench: Bench = 'laboratory'): MixReply {
  const reply = replyTo(question, journal, today, bench);
  if (!reply.refusal) return reply;
  const again = changesFor(reply.refusal).find(({ field, value }) =>
    replyTo({ ...question, [field]: value }, journal, today, bench).plan !== undefined);
  return { ...reply, again };
}

function replyTo(question: MixQuestion, journal: Journal, today: Day, bench: Bench): MixReply {
  const { agents } = journal;
  const drawn = question.stock === undefined ? undefined : journal.solution(question.stock);
  const known = drawn && textsOf(drawn);
  const texts = { ...question, ...known };
  const asked = askedFor(texts, agents);
  const problems: Partial<Record<MixField | 'stock' | 'id', string>> = asked.ok ? {} : { ...asked.problems };
  if (question.stock !== undefined && !known) problems.stock = drawn?.form === 'powder' ? 'Fix its line first.' : 'Its strength is unknown.';
  if (question.id !== undefined) {
    const problem = problemOfId(journal, question.id);
    if (problem !== undefined) problems.id = problem;
  }
  const base: MixReply = {
    agents: [...agents.values()].filter(({ role }) => role !== 'water').map(({ word, name, form }) =>
      ({ word, name, liquid: form === 'liquid' })),
    stocks: onShelf(journal, question.agent, today),
    problems, plan: undefined, refusal: undefined, again: undefined, title: '', text: '', html: '', id: undefined, record: undefined,
  };
  if (!asked.ok || Object.keys(problems).length > 0) return base;
  const { request } = asked;
  const stale = drawn && staleOn(drawn, today);
  const byEye = drawn !== undefined && isHeldByEye(drawn, journal);
  const plan = planMix({
    ...request, bench, limit: journal.limits.strength(request.agent, undefined)?.value,
    dates: { made: isoOf(today), sign: drawn && strengthSign({ isAtMost: stale !== undefined, isAbout: byEye }) },
    // A stock from powder that is good on the day keeps as any other does: so does its record.
    keeping: { rule: journal.limits.stock, today, sourceUntil: drawn?.form === 'powder' ? undefined : drawn?.keeps?.until },
  });
  const answer = drawn && plan.possible
    ? shortOf(drawn, plan, journal) ?? withWarnings(plan, drawn, { isStale: stale !== undefined, byEye, today }) : plan;
  const title = mixTitle(request);
  const told = { ...base, title, text: mixText(answer), html: mixHtml(title, answer) };
  if (!answer.possible) return { ...told, refusal: answer };
  const free = drawn && drawn.form !== 'powder'
    ? freeId(journal, `${drawn.id}-${idOf(answer, request.agent)}`) : nextStockId(journal, request.agent.word);
  const id = question.id ?? free;
  return { ...told, plan: answer, id, record: recordOf(id, answer, request.source, drawn?.id) };
}

/** The strength in an id: that which was asked for, however close to it the tools and the bottle come. */
function idOf({ asked: { strength }, result }: MixPlan, agent: Agent): number {
  const wanted = strengthInPpm(strength, agent);
  const { unit, value } = usualStrength(wanted.ok ? wanted.value : exact(result.ppm), agent);
  return unit === 'ppm' ? Math.round(value) : Number(value.toPrecision(3));
}

interface Held {
  readonly isStale: boolean;
  readonly byEye: boolean;
  readonly today: Day;
}

/** What is past its date is weaker than its label, and so is what is made of it. Halved by eye it stays “about”. */
function withWarnings(plan: MixPlan, drawn: Solution, { isStale, byEye, today }: Held): MixPlan {
  const { id } = drawn;
  const { text } = plan.result;
  const until = pastSince(drawn, today);
  const why = until === undefined ? 'was made from what was past its date' : `was good until ${isoOf(until)}`;
  const warnings: MixWarning[] = [
    ...(isStale ? [{ id: 'past-date' as const, text: `${id} ${why}, so the strength is at most ${text}.` }] : []),
    ...(byEye ? [{ id: 'by-eye' as const, text: `The powder in ${id} was halved by eye, so the strength is about ${text}.` }] : []),
  ];
  return { ...plan, warnings: [...plan.warnings, ...warnings] };
}
