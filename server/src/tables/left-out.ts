import { remarksBelow } from '../words/remarks.ts';
import { keywords } from '../model/keywords.ts';
import { recordsOf, whyLeftOut, type LeftOut } from './records.ts';
import { placed } from './source.ts';
import { table, text, word } from './table.ts';

/** What no other table has. */
export const leftOut = table<LeftOut>(
  {
    name: 'left_out',
    says: 'A row for each line that is in no other table: dates, settings, and lines that Plumule cannot read. Comments are left out of all tables.',
    key: ['file', 'line'],
  },
  [
    ...placed<LeftOut>(({ line }) => line),
    word('why', 'Why it is in no other table.', whyLeftOut, ({ why }) => why),
    word('keyword', 'The keyword of the record.', Object.keys(keywords), ({ record }) => record?.keyword),
    text('text', 'The line.', ({ line }) => line.text),
    text('remark', 'The remarks below the line, a line each.', ({ line }) => remarksBelow(line)),
  ],
  source => recordsOf(source).leftOut,
);
