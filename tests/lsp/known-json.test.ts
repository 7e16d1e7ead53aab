import fc from 'fast-check';
import { expect, test } from 'vitest';
import { encode, knownList, plain } from '../../server/src/lsp/known-json.ts';
import type { Message } from '../../server/src/lsp/protocol.ts';

const written = (message: Message): unknown => JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(encode(message)));

const list = fc.array(fc.oneof(fc.integer(), fc.record({ message: fc.string({ unit: 'binary' }) })));
const json = list.map(all => ({ all, json: JSON.stringify(all) }));

test('a message with a list that is JSON already is the message with the list', () => {
  fc.assert(fc.property(json, fc.boolean(), fc.string({ unit: 'binary' }), fc.option(fc.nat(), { nil: undefined }), (
    { all, json: text }, asBytes, uri, version,
  ) => {
    const known = knownList(asBytes ? new TextEncoder().encode(text) : text);
    const method = 'textDocument/publishDiagnostics';
    const messages = (items: unknown) => [
      { jsonrpc: '2.0', method, params: { uri, diagnostics: items, version } },
      { jsonrpc: '2.0', id: 7, result: { resultId: uri, data: items } },
      { jsonrpc: '2.0', id: 7, result: { data: items } },
      { result: { data: items }, jsonrpc: '2.0', id: uri },
    ];
    const expected = JSON.parse(JSON.stringify(messages(all))) as unknown;
    expect(messages(known).map(written)).toEqual(expected);
    expect(JSON.parse(JSON.stringify(messages(known).map(plain)))).toEqual(expected);
    expect(JSON.parse(JSON.stringify(messages(known)))).toEqual(expected);
  }));
});

test.each<object>([
  { jsonrpc: '2.0', id: 1, result: null },
  { jsonrpc: '2.0', id: 1, result: [{ data: [1] }] },
  { jsonrpc: '2.0', id: 1, result: 'data' },
  { jsonrpc: '2.0', id: 1, error: { code: -32700, message: 'früher' } },
  { jsonrpc: '2.0', method: 'exit' },
  { jsonrpc: '2.0', method: 'textDocument/publishDiagnostics', params: { uri: 'file:///a', diagnostics: [{ message: '“5”' }] } },
])('%j is sent as it is', message => {
  expect(written(message as Message)).toEqual(message);
  expect(plain(message as Message)).toBe(message);
});
