/** Names for new solutions. */
import type { Journal } from '../../journal/journal.ts';
import { parse } from '../../syntax/parse.ts';

/** Whether nothing has a name and no record uses it: one that is used would come to mean the new thing. */
export function isFree(journal: Journal, id: string): boolean {
  return !journal.agents.has(id) && journal.mentionsOf(id).length === 0;
}

/** The base itself, or with a number behind it where that is not free. */
export function freeId(journal: Journal, base: string, taken: ReadonlySet<string> = new Set()): string {
  for (let n = 1; ; n++) {
    const id = n === 1 ? base : `${base}-${n}`;
    if (!taken.has(id) && isFree(journal, id)) return id;
  }
}

/** The next in the row of the journal's stocks of an agent, else of all: G26 after G25; S1 where there is none. */
export function nextStockId(journal: Journal, agent: string): string {
  const stocks = [...journal.solutions()].filter(({ form, from }) => form !== 'powder' && from === undefined);
  const last = (stocks.findLast(each => each.agent?.word === agent) ?? stocks.at(-1))?.id ?? 'S0';
  const [, letters = last, number] = /^(.*?)(\d{1,9})$/.exec(last) ?? [];
  if (number === undefined) return freeId(journal, letters);
  for (let n = Number(number) + 1; ; n++) {
    const id = `${letters}${String(n).padStart(number.length, '0')}`;
    if (freeId(journal, id) === id) return id;
  }
}

/** Why a text cannot be the name of a new solution; undefined where it can. */
export function problemOfId(journal: Journal, id: string): string | undefined {
  const { record, problems } = parse(`stock ${id}, GA3 1 mg, 1 mL`);
  if (problems[0]) return problems[0].message;
  if (record?.subject?.text !== id) return 'Write one word: a letter, then letters, digits, “-”, “.” and “_”.';
  return freeId(journal, id) === id ? undefined : `“${id}” is the name of something else: choose another.`;
}
