import { expect } from 'vitest';
import { tokenize, type Token } from './tokens.ts';

interface Marker {
  readonly line: number;
  readonly start: number;
  readonly end: number;
  readonly scope: string;
}

const MARKER = /^( *)(\^+) (\S+)$/;

/** The lines of a fixture, and the markers below them. The indentation of the first line is taken off all. */
function read(fixture: string): { lines: string[]; markers: Marker[] } {
  const [first = '', ...rest] = fixture.replace(/^\n/, '').trimEnd().split('\n');
  const indent = first.search(/\S/);
  const lines: string[] = [];
  const markers: Marker[] = [];
  for (const text of [first, ...rest].map(line => line.slice(indent))) {
    const found = MARKER.exec(text);
    if (!found) {
      lines.push(text);
      continue;
    }
    const [, blank = '', carets = '', scope = ''] = found;
    markers.push({ line: lines.length - 1, start: blank.length, end: blank.length + carets.length, scope });
  }
  return { lines, markers };
}

/** Names are compared part by part: `constant.numeric` covers `constant.numeric.date.plumule`. */
function isA(token: Token, scope: string): boolean {
  return token.scopes.some(name => name === scope || name.startsWith(`${scope}.`));
}

/** Where a scope begins and ends around a place; undefined when the place does not have it. */
function extent(tokens: readonly Token[], at: number, scope: string): string | undefined {
  let from = tokens.findIndex(token => token.start <= at && at < token.end);
  const found = tokens[from];
  if (!found || !isA(found, scope)) return undefined;
  let to = from;
  while (from > 0 && isA(tokens[from - 1]!, scope)) from--;
  while (to < tokens.length - 1 && isA(tokens[to + 1]!, scope)) to++;
  return tokens.slice(from, to + 1).map(token => token.text).join('').trimEnd();
}

/**
 * Checks `^^^^ scope` below the text it covers: the scope must begin and end just there. The lines are read twice:
 * as an editor hands them over, and with the carriage return that other readers leave on.
 */
export function expectScopes(fixture: string): void {
  const { lines, markers } = read(fixture);
  expect(markers, 'a fixture without markers').not.toHaveLength(0);
  for (const ending of ['', '\r']) {
    const tokens = tokenize(lines.map(line => line + ending));
    for (const { line, start, end, scope } of markers) {
      const text = lines[line]!.slice(start, end);
      const found = extent(tokens[line]!, start, scope);
      const scopes = tokens[line]!.find(token => token.start <= start && start < token.end)?.scopes;
      expect(found, `${scope} on “${text}” in “${lines[line]!}”: ${String(scopes)}`).toBe(text.trimEnd());
      expect(text, `${scope} must begin where the marker does`).toBe(lines[line]!.slice(start, start + text.length));
    }
  }
}
