/** What is no fact of the record, said in a remark below it. */
import { parse } from '../../../syntax/parse.ts';
import { shown } from '../../../syntax/reader.ts';
import { lineEndAt } from '../below.ts';
import { replace, type Mender } from './mend.ts';

/** Only where the record is whole without it, and nothing else mends it. */
export const intoRemark: Mender = ({ entry: { line }, problem }) => {
  if (problem.fixes.length > 0) return [];
  const { text } = line;
  const before = text.slice(0, problem.start).trimEnd();
  const isFact = before.endsWith(',');
  const start = isFact ? before.slice(0, -1).trimEnd().length : before.length;
  const rest = text.indexOf(',', problem.end);
  const end = !isFact ? problem.end : rest < 0 ? text.length : rest;
  const words = text.slice(isFact ? before.length : problem.start, end).replace(/^[\s#]+/, '').trimEnd();
  const kept = text.slice(0, start) + text.slice(end);
  if (words === '' || parse(kept).problems.length > 0) return [];
  return [{
    title: `Move “${shown(words)}” to a remark below`,
    edits: [replace(line, { start, end: text.length }, `${text.slice(end)}${lineEndAt(line)}  ${words}`)],
  }];
};

/** `about 4`, `4?`: the number stays where it is, and the words below say that nobody counted it. */
export const estimateIntoRemark: Mender = ({ entry: { line }, problem }) => {
  if (problem.fixes.length > 0) return [];
  const { text } = line;
  const from = text.lastIndexOf(',', problem.start) + 1;
  const next = text.indexOf(',', problem.end);
  const fact = { start: from, end: next < 0 ? text.length : next };
  const words = text.slice(fact.start, fact.end).trim();
  const ahead = text.slice(fact.start, problem.start).trim();
  const behind = text.slice(problem.end, fact.end).trim();
  const number = problem.code === 'stray-text' ? doubted(ahead, text.slice(problem.start, fact.end)) : ahead === '' ? behind : '';
  if (!/^=?\d/.test(number)) return [];
  const kept = `${text.slice(0, fact.start)} ${number}${text.slice(fact.end)}`;
  if (parse(kept).problems.length >= line.content.problems.length) return [];
  return [{
    title: `Write “${shown(number)}”, and “${shown(words)}” in a remark below`,
    edits: [replace(line, { start: fact.start, end: text.length }, `${kept.slice(fact.start)}${lineEndAt(line)}  ${words}`)],
  }];
};

/** What stands before the mark of a doubt, which nothing may follow. */
function doubted(ahead: string, mark: string): string {
  return /^[?~]\s*$/.test(mark) ? ahead : '';
}
