/** What the tests of completion share: what is offered at a mark, and the line as it is after taking it. */
import { completionsAt, type Trigger } from '../../../server/src/features/completion/completion.ts';
import type { Completions, Suggestion } from '../../../server/src/features/completion/suggestion.ts';
import { plainText, type Template } from '../../../server/src/features/completion/template.ts';
import { variantsOf, type Fixture } from '../../support/fixture.ts';
import { at, cursorOf, journalOf } from '../journals.ts';

export const NOW = '2026-01-19 19:05';

function completionsOf(fixture: Fixture, now: string, trigger: Trigger): Completions | undefined {
  const { file, position } = cursorOf(fixture, 'here');
  return completionsAt(journalOf(fixture), file, position, at(now), trigger);
}

/**
 * What is offered where the mark `here` ends. Throws where that is something else with other line ends, without a last
 * newline, or with an emoji in the plant's name.
 */
export function offered(source: string, now = NOW, trigger?: Trigger): Completions | undefined {
  const [first, ...others] = variantsOf(source).map(({ fixture }) => completionsOf(fixture, now, trigger));
  const plain = (found: Completions | undefined) => JSON.stringify(found?.items ?? []).replaceAll(/ ?🌱/g, '');
  for (const other of others) {
    if (plain(other) !== plain(first)) throw new Error(`another completion in a variant:\n${plain(other)}\n${plain(first)}`);
  }
  return first;
}

/** Each as its label, and behind a dot what is said beside it. */
export function labels(found: Completions | undefined): string[] {
  return (found?.items ?? []).map(({ label, detail }) => (detail === undefined ? label : `${label} · ${detail}`));
}

/**
 * The line of the mark once a suggestion is taken, with a 1 where only the grower knows the number, or a day or a book;
 * `plain`: as a
 * client without blanks has it then.
 */
export function taken(
  source: string, item: Suggestion, { start, end }: Completions, how: 'blanks' | 'plain' = 'blanks',
): string {
  const [{ fixture } = { fixture: undefined }] = variantsOf(source);
  const { file, position: { line } } = cursorOf(fixture!, 'here');
  const text = fixture!.files.find(({ name }) => name === file)!.text.split('\n')[line]!;
  const { write = [item.label] } = item;
  const blanks = plainText(write.map((part, n) => (isOpen(part) ? known[write[n - 1] as string] ?? '1' : part)));
  return text.slice(0, start) + (how === 'plain' ? item.plain ?? blanks : blanks) + text.slice(end);
}

const known: Readonly<Record<string, string>> = {
  'collected ': '2025-09-14', 'bought ': '2025-03', 'look again ': '2027-03-01', 'source ': '"a book"',
};

/** A blank in which nothing is made up. */
export function isOpen(part: Template[number]): boolean {
  return typeof part !== 'string' && part.blank === '';
}
