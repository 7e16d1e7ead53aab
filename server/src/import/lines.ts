/** Lines of a journal made of cells: only what reads back as it was meant. */
import type { Keyword } from '../model/keywords.ts';
import type { Fact, FactType } from '../model/record.ts';
import { parse } from '../syntax/parse.ts';
import { print } from '../syntax/print.ts';

/** A fact that cells give, in the ways it can be written; the first that reads back as meant is taken. */
export interface FactWanted {
  readonly type: FactType;
  readonly ways: readonly string[];
  /** The text that it must read back as, for a fact that is a text. */
  readonly text?: string;
  /** The columns that it is made of. */
  readonly columns: readonly number[];
}

/** A text behind a word: `from`, `at`, `in`, `stored`. */
export function textWanted(type: 'from' | 'at' | 'in' | 'stored', cell: string, column: number): FactWanted {
  const text = oneLine(cell);
  return { type, ways: [`${type} ${text}`, `${type} "${text}"`], text, columns: [column] };
}

export function oneLine(cell: string): string {
  return cell.replaceAll(/\s+/g, ' ').trim();
}

export interface Built {
  /** Undefined where a fact that the record must have could not be written. */
  readonly line: string | undefined;
  /** The facts that found no place. */
  readonly unused: readonly FactWanted[];
}

/** Example: buildLine('sow', 'GEN-25 2026-01-11', [24 seeds]) is 'sow GEN-25 2026-01-11, 24 seeds' */
export function buildLine(keyword: Keyword, head: string, wanted: readonly FactWanted[]): Built {
  let line = `${keyword} ${head}`;
  const facts: Fact[] = [];
  const unused: FactWanted[] = [];
  for (const want of wanted) {
    const way = want.ways.find(text => isRead(`${line}, ${text}`, keyword, want, facts.length + 1));
    if (way === undefined) unused.push(want);
    else {
      line = `${line}, ${way}`;
      facts.push(...parse(line).record!.facts.slice(facts.length));
    }
  }
  const { record, problems } = parse(line);
  return { line: record?.keyword === keyword && problems.length === 0 ? print(line, record) : undefined, unused };
}

function isRead(line: string, keyword: Keyword, { type, text }: FactWanted, n: number): boolean {
  const { record, problems } = parse(line);
  const last = record?.facts.at(-1);
  if (problems.length > 0 || record?.keyword !== keyword) return false;
  if (record.facts.length !== n || last?.type !== type) return false;
  if (text === undefined) return true;
  return 'value' in last && typeof last.value === 'object' && 'text' in last.value && last.value.text === text;
}

/** How a plant's name is written on a `lot`: as it is, or in quotation marks; undefined where neither can be read. */
export function plantText(id: string, name: string): string | undefined {
  const text = oneLine(name);
  return [text, `"${text}"`].find(way => {
    const { record, problems } = parse(`lot ${id} ${way}`);
    return problems.length === 0 && record?.plant?.text === text && record.facts.length === 0;
  });
}

/** Facts without where they stand: the same for two that say the same. Of 0, new and total are one. */
export function factKeys(facts: readonly Fact[]): string[] {
  const isPlace = (key: string) => key === 'start' || key === 'end';
  const plain = facts.map(fact => (fact.type === 'count' && fact.n.value === 0 ? { ...fact, total: false } : fact));
  return plain.map(fact => JSON.stringify(fact, (key, value: unknown) => (isPlace(key) ? undefined : value)));
}
