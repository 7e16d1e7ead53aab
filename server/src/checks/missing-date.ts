import { subjectIdOf } from '../journal/mentions.ts';
import { keywords } from '../model/keywords.ts';
import { found, type Found, type IdCheck } from './check.ts';

const one = { which: 'This record has no date', it: 'it' };

/**
 * Records about a thing that carry no date and stand below no `day`. A date that is there but wrong is another problem,
 * be it their own or that of the `day` line.
 */
export const missingDate: IdCheck = function* (id, mentions, { journal }) {
  for (const { line, record, moment } of mentions) {
    // A record that needs a date of its own is judged by its line alone.
    if (moment || record.broken || keywords[record.keyword].dated !== 'yes') continue;
    if (subjectIdOf(record) !== id || journal.files.get(line.store.name)?.isBelowDay(line.number)) continue;
    yield found(line, 'missing-date', record.keywordSpan, one);
  }
};

/**
 * The problems of a file in the order of its lines, with one for each row of records that miss their `day` line: what
 * is missing there is one line. A record with a date of its own ends the row.
 */
export function onceForEachRow(problems: Found[]): Found[] {
  if (!problems.some(({ problem }) => problem.code === 'missing-date')) return problems;
  const rows: Found[][] = [];
  for (const each of problems) {
    if (each.problem.code !== 'missing-date') continue;
    const row = rows.at(-1);
    if (row && !isDatedBetween(row.at(-1)!, each)) row.push(each);
    else rows.push([each]);
  }
  const told = new Map(rows.map(row => [row[0], row.length > 1 ? ofRow(row) : row[0]!]));
  return problems.flatMap(each => (each.problem.code === 'missing-date' ? told.get(each) ?? [] : [each]));
}

function ofRow(row: readonly Found[]): Found {
  const { line, problem } = row[0]!;
  const below = row.length === 2 ? 'one more below' : `${row.length - 1} more below`;
  return found(line, 'missing-date', problem, { which: `This record and ${below} have no date`, it: 'them' });
}

function isDatedBetween({ line }: Found, { line: to }: Found): boolean {
  for (let n = line.number + 1; n < to.number; n++) {
    const { record } = line.store.at(n).content;
    if (record?.date && record.keyword !== 'due') return true;
  }
  return false;
}
