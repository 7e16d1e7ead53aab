import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { LineStore, type Line, type Range } from '../../server/src/text/line-store.ts';

interface Content {
  readonly of: string;
}

const storeOf = (text: string) => new LineStore<Content>('a.germ', text, line => ({ of: line }));

const piece = fc.constantFrom('\n', '\r\n', '\r', '', 'a', 'bc', ' ', '🌱', '種子', '\n\n', '\r\r\n', '\n\r');
const text = (most: number) => fc.array(piece, { maxLength: most }).map(pieces => pieces.join(''));
const position = fc.record({ line: fc.integer({ min: -1, max: 14 }), character: fc.integer({ min: -1, max: 9 }) });
const range = fc.record({ start: position, end: position });
const edits = fc.array(fc.record({ range, text: text(6) }), { maxLength: 8 });

/** The peer takes no negative numbers; the protocol has none. A store takes them as 0. */
function legal({ start, end }: Range): Range {
  const at = (p: Range['start']) => (p.line < 0 ? { line: 0, character: 0 } : { ...p, character: Math.max(0, p.character) });
  return { start: at(start), end: at(end) };
}

const peerOf = (text: string) => TextDocument.create('file:///a.germ', 'plumule', 0, text);

/** A new peer each time: its own update counts lines wrong when a range lies beyond the end. */
const edited = (peer: TextDocument, where: Range, newText: string) =>
  peerOf(TextDocument.applyEdits(peer, [{ range: legal(where), newText }]));

function expectSame(store: LineStore<Content>, peer: TextDocument): void {
  expect(store.text()).toBe(peer.getText());
  expect(store.lineCount).toBe(peer.lineCount);
  const lines = [...store];
  // One expectation for all lines: it costs more than the look at one.
  expect(lines.filter((line, n) => line.number !== n || store.at(n) !== line || line.content.of !== line.text
    || line.store !== store)).toEqual([]);
}

describe('a text kept as lines', () => {
  it('holds the same text as the peer after any edits, ranges beyond the end and reversed ones included', () => {
    fc.assert(fc.property(text(20), edits, (start, steps) => {
      const store = storeOf(start);
      let peer = peerOf(start);
      expectSame(store, peer);
      for (const step of steps) {
        store.edit(step.range, step.text);
        peer = edited(peer, step.range, step.text);
        expectSame(store, peer);
      }
    }), { numRuns: 500 });
  });

  it('gives the same offsets, positions and parts of the text as the peer', () => {
    const offset = fc.integer({ min: -2, max: 60 });
    fc.assert(fc.property(text(20), fc.array(range), fc.array(offset), (start, ranges, offsets) => {
      const store = storeOf(start);
      const peer = peerOf(start);
      for (const each of ranges) {
        expect(store.text(each)).toBe(peer.getText(legal(each)));
        expect(store.offsetAt(each.start)).toBe(peer.offsetAt(legal(each).start));
      }
      for (const each of offsets) expect(store.positionAt(each)).toEqual(peer.positionAt(each));
    }), { numRuns: 500 });
  });

  it('does so across blocks of lines', () => {
    const many = Array.from({ length: 1600 }, (_, n) => `line ${n}${['\n', '\r\n', '\r'][n % 3]}`).join('');
    const far = fc.record({ line: fc.integer({ min: 0, max: 1700 }), character: fc.integer({ min: 0, max: 12 }) });
    const long = fc.oneof(text(8), fc.integer({ min: 500, max: 2500 }).map(n => 'x\n'.repeat(n)));
    const step = fc.record({ range: fc.record({ start: far, end: far }), text: long });
    fc.assert(fc.property(fc.array(step, { minLength: 1, maxLength: 6 }), steps => {
      const store = storeOf(many);
      let peer = peerOf(many);
      for (const each of steps) {
        store.edit(each.range, each.text);
        peer = edited(peer, each.range, each.text);
        expect(store.text()).toBe(peer.getText());
        expect([...store].every((line, at) => line.number === at && store.at(at) === line)).toBe(true);
        const { start } = each.range;
        expect(store.offsetAt(start)).toBe(peer.offsetAt(start));
        expect(store.positionAt(peer.offsetAt(start))).toEqual(peer.positionAt(peer.offsetAt(start)));
      }
    }), { numRuns: 30 });
  });

  it('keeps the identity of every line outside the change it reports, and of none inside', () => {
    fc.assert(fc.property(text(30), range, text(6), (start, where, inserted) => {
      const store = storeOf(start);
      const before = [...store];
      const { at, removed, added } = store.edit(where, inserted);
      expectChange(store, before, { at, removed, added });
    }), { numRuns: 500 });
  });

  it('joins a carriage return and a line feed that an edit brings together to one line end', () => {
    const store = storeOf('a\rb\nc');
    store.edit({ start: { line: 1, character: 0 }, end: { line: 1, character: 1 } }, '');
    expect([...store].map(line => [line.text, line.end])).toEqual([['a', '\r\n'], ['c', '']]);
  });

  it('parts a carriage return from its line feed when a text comes between them', () => {
    const store = storeOf('a\r\nb');
    store.edit({ start: { line: 0, character: 1 }, end: { line: 1, character: 0 } }, '\r-\n');
    expect([...store].map(line => [line.text, line.end])).toEqual([['a', '\r'], ['-', '\n'], ['b', '']]);
  });

  it('takes over a new text whole and keeps the lines before and after the difference', () => {
    fc.assert(fc.property(text(20), text(6), text(20), text(6), (head, was, tail, now) => {
      const store = storeOf(head + was + tail);
      const before = [...store];
      const change = store.reset(head + now + tail);
      expect(store.text()).toBe(head + now + tail);
      expectChange(store, before, change);
      const { removed, added } = change;
      if (removed.length === 0 || added.length === 0) return;
      const written = (line: Line<Content>) => [line.text, line.end];
      expect(written(removed[0]!)).not.toEqual(written(added[0]!));
      expect(written(removed.at(-1)!)).not.toEqual(written(added.at(-1)!));
    }), { numRuns: 500 });
  });

  it('changes nothing when the new text is the old one', () => {
    const store = storeOf('a\nb\n');
    const before = [...store];
    expect(store.reset('a\nb\n')).toEqual({ at: 3, removed: [], added: [] });
    expect([...store]).toEqual(before);
  });

  it('reads each line that comes once, and no other', () => {
    const read: string[] = [];
    const store = new LineStore('a.germ', 'a\nb\nc', line => read.push(line));
    store.edit({ start: { line: 1, character: 1 }, end: { line: 1, character: 1 } }, '!\n?');
    expect(read).toEqual(['a', 'b', 'c', 'b!', '?']);
  });

  it('refuses the number of a removed line and a line outside the text', () => {
    const store = storeOf('a\nb');
    const gone = store.at(1);
    store.reset('a');
    expect(() => gone.number).toThrow(RangeError);
    expect(() => gone.store).toThrow(RangeError);
    expect(() => store.at(1)).toThrow(RangeError);
    expect(() => store.at(-1)).toThrow(RangeError);
  });

  it('gives the line numbers right when whole blocks of lines are removed and lines come again', () => {
    const store = storeOf('x\n'.repeat(3000));
    store.edit({ start: { line: 512, character: 0 }, end: { line: 1024, character: 0 } }, '');
    store.edit({ start: { line: 0, character: 0 }, end: { line: 512, character: 0 } }, '');
    store.edit({ start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }, 'y\n'.repeat(600));
    expect([...store].every((line, at) => line.number === at)).toBe(true);
    expect(store.text()).toBe('y\n'.repeat(600) + 'x\n'.repeat(3000 - 1024));
  });
});

function expectChange(
  store: LineStore<Content>,
  before: readonly Line<Content>[],
  { at, removed, added }: { at: number; removed: readonly Line<Content>[]; added: readonly Line<Content>[] },
): void {
  const after = [...store];
  expect(removed).toEqual(before.slice(at, at + removed.length));
  expect(added).toEqual(after.slice(at, at + added.length));
  const kept = (lines: readonly Line<Content>[], gone: number) => [...lines.slice(0, at), ...lines.slice(at + gone)];
  const stayed = kept(before, removed.length);
  expect(kept(after, added.length).every((line, n) => line === stayed[n])).toBe(true);
  expect(after.length - added.length).toBe(stayed.length);
  expect(added.some(line => before.includes(line))).toBe(false);
}
