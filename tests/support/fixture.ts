/**
 * Journals with marks, as tests write them:
 *
 *     --- 2026.germ
 *     lot VER-24 Veratrum nigrum, 60 seeds
 *     soak VER-24 2026-01-10 19:00, GA3 500 ppm, 30 h
 *                                                ^^^^ soak-too-long
 *
 * Files follow each other, each under `--- name`; without such a line there is one, `journal.germ`. The indentation
 * of the first line is taken off all. A line whose first sign is `^` marks places in the line of the journal above
 * it: each row of `^` covers the characters above, the text behind it is the label. There may be several on a line
 * and several such lines. They are taken out of the text. Columns are UTF-16 units, so an emoji is two wide.
 */

export interface Mark {
  readonly file: string;
  /** From 0, as are columns; `end` is exclusive. */
  readonly line: number;
  readonly start: number;
  readonly end: number;
  readonly label: string;
}

export interface FixtureFile {
  readonly name: string;
  readonly text: string;
}

export interface Fixture {
  readonly files: readonly FixtureFile[];
  readonly expected: readonly Mark[];
}

const HEADING = /^--- (\S+)\s*$/;
const MARKS = /^\s*\^/;

/** Reads a fixture. Throws where a mark stands below no line or beyond its end. */
export function readFixture(source: string): Fixture {
  const files: { name: string; lines: string[] }[] = [];
  const expected: Mark[] = [];
  for (const line of dedented(source)) {
    const name = HEADING.exec(line)?.[1];
    if (name !== undefined) {
      files.push({ name, lines: [] });
      continue;
    }
    if (files.length === 0) files.push({ name: 'journal.germ', lines: [] });
    const file = files.at(-1)!;
    if (MARKS.test(line)) expected.push(...marksIn(line, file));
    else file.lines.push(line);
  }
  return { files: files.map(({ name, lines }) => ({ name, text: lines.map(line => `${line}\n`).join('') })), expected };
}

function dedented(source: string): string[] {
  const lines = source.replace(/^\n/, '').replace(/\n *$/, '').split('\n');
  const indent = /^ */.exec(lines[0]!)![0].length;
  return lines.map(line => line.slice(Math.min(indent, /^ */.exec(line)![0].length)));
}

function marksIn(line: string, file: { name: string; lines: string[] }): Mark[] {
  const number = file.lines.length - 1;
  const above = file.lines[number] ?? '';
  return [...line.matchAll(/(\^+) *([^^]*)/g)].map(({ 1: carets, 2: label, index }) => {
    const end = index + carets!.length;
    if (end > above.length) throw new RangeError(`a mark reaches beyond its line:\n${above}\n${line}`);
    return { file: file.name, line: number, start: index, end, label: label!.trim() };
  });
}

/** Writes a journal with its marks; `readFixture` of it gives the same again. */
export function writeFixture({ files, expected }: Fixture): string {
  return files.map(({ name, text }) => {
    const lines = text.replace(/\n$/, '').split('\n').map((line, number) => {
      const marks = expected.filter(mark => mark.file === name && mark.line === number);
      return [line, ...sorted(marks).map(pointer)].join('\n');
    });
    return [`--- ${name}`, ...lines, ''].join('\n');
  }).join('');
}

function pointer({ start, end, label }: Mark): string {
  return `${' '.repeat(start)}${'^'.repeat(end - start)} ${label}`;
}

function sorted(marks: readonly Mark[]): Mark[] {
  const byLabel = (a: Mark, b: Mark) => (a.label < b.label ? -1 : a.label > b.label ? 1 : 0);
  return [...marks].sort((a, b) => a.line - b.line || a.start - b.start || a.end - b.end || byLabel(a, b));
}

/**
 * What is missing and what was not expected, each below its line; '' when all is as marked. For
 * `expect(differences(fixture, found)).toBe('')`.
 */
export function differences({ files, expected }: Fixture, found: readonly Mark[]): string {
  const left = [...found];
  const missing = sorted(expected).filter(mark => {
    const index = left.findIndex(other => same(mark, other));
    if (index >= 0) left.splice(index, 1);
    return index < 0;
  });
  const told = (what: string) => (mark: Mark) => {
    const text = files.find(({ name }) => name === mark.file)?.text.split(/\r\n|\n|\r/)[mark.line];
    return `${what}: ${mark.file}:${mark.line + 1}\n${text ?? '(no such line)'}\n${pointer(mark)}`;
  };
  return [...missing.map(told('missing')), ...sorted(left).map(told('not expected'))].join('\n\n');
}

function same(a: Mark, b: Mark): boolean {
  return a.file === b.file && a.line === b.line && a.start === b.start && a.end === b.end && a.label === b.label;
}

/** A fixture as written; with CRLF; without an end of its last lines; with an emoji in the name of each lot's plant. */
export function variantsOf(source: string): { readonly name: string; readonly fixture: Fixture }[] {
  const fixture = readFixture(source);
  const changed = (change: (text: string) => string): Fixture =>
    ({ ...fixture, files: fixture.files.map(({ name, text }) => ({ name, text: change(text) })) });
  return [
    { name: 'as written', fixture },
    { name: 'with CRLF', fixture: changed(text => text.replaceAll('\n', '\r\n')) },
    { name: 'without a final newline', fixture: changed(text => text.replace(/\n$/, '')) },
    { name: 'with emoji in the names of plants', fixture: withEmoji(fixture) },
  ];
}

const EMOJI = '🌱';

/** The genus stays as it is, because limits and guides are written for it. */
const PLANT = /^(lot\s+\S+\s+)(\p{L}[^\s,]*)(?:(\s+\p{L})\p{L})?/iu;

function withEmoji({ files, expected }: Fixture): Fixture {
  let marks = expected;
  const changed = files.map(({ name, text }) => ({
    name,
    text: text.split('\n').map((line, number) => {
      const plant = PLANT.exec(line);
      if (!plant) return line;
      const inserted = plant[3] === undefined ? ` ${EMOJI}` : EMOJI;
      const at = `${plant[1]!}${plant[2]!}${plant[3] ?? ''}`.length;
      const moved = (column: number) => (column > at ? column + inserted.length : column);
      marks = marks.map(mark => (mark.file === name && mark.line === number
        ? { ...mark, start: mark.start >= at ? mark.start + inserted.length : mark.start, end: moved(mark.end) }
        : mark));
      return line.slice(0, at) + inserted + line.slice(at);
    }).join('\n'),
  }));
  return { files: changed, expected: marks };
}
