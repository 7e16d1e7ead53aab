/** Answers for whoever is asked step by step what solution is wanted: what can be chosen, what is wrong, the plan. */
import type { Journal } from '../../journal/journal.ts';
import { ledger } from '../../journal/draws.ts';
import type { Solution } from '../../journal/solutions.ts';
import { isoOf, type Day } from '../../model/day.ts';
import { printQuantity, type Volume } from '../../model/quantity.ts';
import { isPositive, volumeInMl, type Exact } from '../../solutions/amounts.ts';
import { showVolume, toNumber } from '../../solutions/display.ts';
import type { MixPlan, MixRefusal } from '../../solutions/mix-plan.ts';
import type { Bench } from '../../solutions/tools.ts';
import { planMix } from '../../solutions/mix.ts';
import { changesFor, type ChangedAnswer } from './again.ts';
import { freeId, nextStockId, problemOfId } from './ids.ts';
import { mixHtml } from './page.ts';
import { recordOf } from './record.ts';
import { askedFor, type MixField, type MixTexts } from './request.ts';
import { mixText, mixTitle } from './text.ts';
import { contentHeld } from '../../words/held.ts';

/** As far as it has been asked by now; everything as typed. */
export interface MixQuestion extends MixTexts {
  /** The id of the journal's stock that it is drawn from, in place of `from`. */
  readonly stock?: string | undefined;
  /** The name of the record to write. */
  readonly id?: string | undefined;
}

export interface MixReply {
  readonly agents: readonly { readonly word: string; readonly name: string; readonly liquid: boolean }[];
  /** The journal's solutions of the agent that something is left of, with what is to know of each. */
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
  const known = drawn?.ppm.ok ? drawn.ppm.value : undefined;
  const texts = drawn && known ? { ...question, from: `${toNumber(known)} ppm` } : question;
  const asked = askedFor(texts, agents);
  const problems: Partial<Record<MixField | 'stock' | 'id', string>> = asked.ok ? {} : { ...asked.problems };
  if (question.stock !== undefined && !known) problems.stock = 'Its strength is unknown.';
  if (question.id !== undefined) {
    const problem = problemOfId(journal, question.id);
    if (problem !== undefined) problems.id = problem;
  }
  const base: MixReply = {
    agents: [...agents.values()].filter(({ role }) => role !== 'water').map(({ word, name, form }) =>
      ({ word, name, liquid: form === 'liquid' })),
    stocks: stocksOf(journal, question.agent, today),
    problems, plan: undefined, refusal: undefined, again: undefined, title: '', text: '', html: '', id: undefined, record: undefined,
  };
  if (!asked.ok || Object.keys(problems).length > 0) return base;
  const { request } = asked;
  const plan = planMix({
    ...request, bench, limit: journal.limits.strength(request.agent, undefined)?.value, dates: { made: isoOf(today) },
    keeping: { rule: journal.limits.stock, today, sourceUntil: drawn?.keeps?.until },
  });
  const answer = drawn && plan.possible ? shortOf(drawn, plan, journal) ?? plan : plan;
  const title = mixTitle(request);
  const told = { ...base, title, text: mixText(answer), html: mixHtml(title, answer) };
  if (!answer.possible) return { ...told, refusal: answer };
  const free = drawn ? freeId(journal, `${drawn.id}-${Math.round(answer.result.ppm)}`) : nextStockId(journal);
  const id = question.id ?? free;
  return { ...told, plan: answer, id, record: recordOf(id, answer, request.source, drawn?.id) };
}

function stocksOf(journal: Journal, agent: string | undefined, today: Day): { id: string; text: string }[] {
  return [...journal.solutions()]
    .filter(solution => solution.agent?.word === agent && solution.ppm.ok)
    .flatMap(solution => {
      const leftMl = ledger(solution, journal.accountOf(solution.id)).left?.most;
      if (leftMl && !isPositive(leftMl)) return [];
      return [{ id: solution.id, text: stockText(solution, leftMl, journal, today) }];
    });
}

/** Why a solution cannot be drawn from a stock that too little is left of; undefined where there is enough. */
function shortOf(
  { id, made }: Solution, { agent, amounts, asked }: MixPlan, journal: Journal,
): MixRefusal | undefined {
  const leftMl = ledger({ made }, journal.accountOf(id)).left?.most;
  const taken = amounts.stock && volumeInMl(amounts.stock.measured as Volume);
  if (!taken || !leftMl || leftMl.gte(taken)) return undefined;
  const wholeMl = volumeInMl(amounts.makeUpTo.measured as Volume);
  const [left, most] = [showVolume(leftMl), showVolume(wholeMl.mul(leftMl).div(taken))];
  const text = `${left.text} of it makes ${most.text} of ${printQuantity(asked.strength)}.`;
  return {
    possible: false, agent, code: 'too-little-left',
    message: `It takes ${showVolume(taken).text} of ${id}, and ${left.text} of it is left.`,
    nearest: isPositive(leftMl)
      ? [{ kind: 'less-volume', text, amounts: { stock: left, makeUpTo: most } }] : [],
  };
}

/** Example: 'GA3 1000 ppm, 8 mL left'; 'GA3 1000 ppm, past its time' */
function stockText(solution: Solution, left: Exact | undefined, journal: Journal, today: Day): string {
  const { keeps } = solution;
  return [
    contentHeld(solution, journal),
    left && `${showVolume(left).text} left`,
    keeps && keeps.until < today ? 'past its time' : undefined,
  ].filter(text => text !== undefined).join(', ');
}
