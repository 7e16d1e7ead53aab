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
