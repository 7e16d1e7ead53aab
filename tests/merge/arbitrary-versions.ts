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
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('remark' as const), place, words: fc.constantFrom('white', 'soft', '5 mm') }) },
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

const edits = fc.array(edit, { maxLength: 8 });
const begun = fc.oneof(text, journal.map(({ files }) => files[0]!.text));

/** Any journal, and any edits of it on both sides. */
export const versions: fc.Arbitrary<Versions> = fc.tuple(begun, edits, edits)
  .map(([base, ours, theirs]) => ({ base, ours: edited(base, ours), theirs: edited(base, theirs) }));
