/** A journal file and what two people made of it, for property tests. */
import fc from 'fast-check';
import { journal } from '../support/arbitrary-journal.ts';
import { line, text } from '../support/arbitrary-edits.ts';

export interface Versions {
  readonly base: string;
  readonly ours: string;
  readonly theirs: string;
}

const place = fc.nat(999);
const edit = fc.oneof(
  { weight: 4, arbitrary: fc.record({ kind: fc.constant('insert' as const), place, line }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('append' as const), line }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('replace' as const), place, line }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('delete' as const), place }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('double' as const), place, to: place }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('move' as const), place, to: place }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('digit' as const), place, digit: fc.nat(9) }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('remark' as const), place, words: fc.nat(99_999).map(n => `white ${n}`) }) },
);
type Edit = typeof edit extends fc.Arbitrary<infer T> ? T : never;

function edited(before: string, edits: readonly Edit[]): string {
  const end = before.includes('\r\n') ? '\r\n' : '\n';
  const lines = before.split(end);
  for (const each of edits) {
    const at = 'place' in each ? each.place % lines.length : lines.length;
    switch (each.kind) {
      case 'insert': case 'append': lines.splice(at, 0, each.line); break;
      case 'replace': lines.splice(at, 1, each.line); break;
      case 'delete': if (lines.length > 1) lines.splice(at, 1); break;
      case 'double': lines.splice(each.to % lines.length, 0, lines[at]!); break;
      case 'move': lines.splice(each.to % lines.length, 0, ...lines.splice(at, 1)); break;
      case 'digit': lines[at] = lines[at]!.replace(/\d(?=\D*$)/, String(each.digit)); break;
      case 'remark': lines.splice(at + 1, 0, `  ${each.words}`); break;
    }
  }
  return lines.join(end);
}

/** Of some nobody can read the date. */
const days = ['day 2026-02-01', 'day 2026-02-02', 'day 2026-02-31', 'day 2026-13-1', 'day', 'day 1.2.2026'];
const dayLine = fc.constantFrom(...days);
/** No two of them alike: which of two that say the same was taken out, nobody can tell. */
const word = fc.nat(99_999).chain(n => fc.constantFrom(`# by hand ${n}`, `  white ${n}`));
const records = fc.constantFrom(
  'note A-1, dry', 'note A-1, wet', 'note B-1, dry', 'note B-1 08:00, wet', 'note A-1 2026-02-03, dry', 'count A-1, 3',
  'count A-1, 4', 'count A-1, 4 seeed', 'cuont A-1, 3', 'lot A-1 Adonis vernalis', 'lot B-1 Bellis perennis, 9 seeds',
  'lot B-1 Bellis perennis, 8 seeds', '',
);
const below = fc.oneof({ weight: 7, arbitrary: records }, { weight: 1, arbitrary: word });
const dayOrBelow = fc.oneof({ weight: 3, arbitrary: below }, { weight: 2, arbitrary: dayLine });
const dayEdit = fc.oneof(
  fc.record({ kind: fc.constant('day' as const), place, line: dayLine }),
  fc.record({ kind: fc.constant('below' as const), place, line: below }),
  fc.record({ kind: fc.constant('insert' as const), place, line: dayOrBelow }),
  fc.record({ kind: fc.constant('delete' as const), place }),
);
type DayEdit = typeof dayEdit extends fc.Arbitrary<infer T> ? T : never;

function redated(before: readonly string[], edits: readonly DayEdit[]): string {
  const lines = [...before];
  for (const each of edits) {
    const { kind } = each;
    const isPlace = (line: string) => kind === 'insert' || kind === 'delete' || days.includes(line) === (kind === 'day');
    const places = [...lines.keys()].filter(n => isPlace(lines[n]!));
    const at = places[each.place % places.length];
    if (at !== undefined) lines.splice(at, kind === 'insert' ? 0 : 1, ...('line' in each ? [each.line] : []));
  }
  return lines.map(text => `${text}\n`).join('');
}

const dayEdits = fc.array(dayEdit, { maxLength: 3 });

/** A short journal, and edits on both sides that break, mend, add and take out its `day` lines. */
export const redatedVersions: fc.Arbitrary<Versions> = fc
  .tuple(fc.array(dayOrBelow, { minLength: 1, maxLength: 6 }), dayEdits, dayEdits)
  .map(([lines, ours, theirs]) => (
    { base: redated(lines, []), ours: redated(lines, ours), theirs: redated(lines, theirs) }));

const edits = fc.array(edit, { maxLength: 8 });
const begun = fc.oneof(text, journal.map(({ files }) => files[0]!.text));

/** Any journal, and any edits of it on both sides. */
export const versions: fc.Arbitrary<Versions> = fc.tuple(begun, edits, edits)
  .map(([base, ours, theirs]) => ({ base, ours: edited(base, ours), theirs: edited(base, theirs) }));
