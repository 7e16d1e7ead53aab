/**
 * The protocol as its authors publish it: which requests belong to which capability, and the types of every message,
 * in the declarations that the meta model of the specification is generated from.
 */
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import * as protocol from 'vscode-languageserver/node';

interface Signature {
  readonly method: string;
  readonly messageDirection?: 'clientToServer' | 'serverToClient';
  readonly capabilities?: { readonly server?: string };
}

const signatures = (Object.values(protocol) as unknown[]).filter((each): each is Signature =>
  typeof each === 'object' && each !== null && 'type' in each && 'method' in each && 'messageDirection' in each);

/** The methods that a client may use with a server that announces these capabilities. */
export function offered(capabilities: object): string[] {
  return signatures.flatMap(({ method, capabilities: needed }) => {
    if (needed?.server === undefined) return [];
    const within = (of: unknown, name: string) => (of as Record<string, unknown> | undefined)?.[name];
    const value = needed.server.split('.').reduce(within, capabilities);
    return value === undefined || value === false ? [] : [method];
  });
}

/** One message: the params of a request or a notification, or the result of a request. */
export interface Typed {
  readonly method: string;
  readonly part: 'params' | 'result';
  readonly value: unknown;
}

const FILE = fileURLToPath(new URL('messages.ts', import.meta.url));

const HEAD = `import type * as protocol from 'vscode-languageserver/node';
type Named = {
  [Name in keyof typeof protocol as (typeof protocol)[Name] extends { readonly method: infer Method extends string }
    ? Method : never]: (typeof protocol)[Name] extends { readonly type: infer Type } ? Type : never
};
type Plain<Value> = Value extends void ? null : Value;
type Result<Method extends keyof Named> =
  Named[Method] extends protocol.ProtocolRequestType<any, infer R, any, any, any> ? Plain<R>
    : Named[Method] extends protocol.ProtocolRequestType0<infer R, any, any, any> ? Plain<R> : never;
type Params<Method extends keyof Named> =
  Named[Method] extends protocol.ProtocolRequestType<infer P, any, any, any, any> ? P
    : Named[Method] extends protocol.ProtocolNotificationType<infer P, any> ? P
      : undefined;
`;

/** What the compiler says against a message. */
export interface Deviation {
  /** Which of the messages it is, from 0 on; undefined for the declarations themselves. */
  readonly of: number | undefined;
  readonly text: string;
}

const OPTIONS: ts.CompilerOptions = {
  strict: true, noEmit: true, skipLibCheck: true, target: ts.ScriptTarget.ES2023, lib: ['lib.es2023.d.ts'],
  module: ts.ModuleKind.ESNext, moduleResolution: ts.ModuleResolutionKind.Bundler, types: ['node'],
};

/** All files but that of the messages: they stay as they are, and are read once. */
const read = new Map<string, ts.SourceFile | undefined>();

/** Messages that have another type, or members that the type has not. The same message is looked at once. */
export function deviations(messages: readonly Typed[]): Deviation[] {
  const firsts = new Map<string, number>();
  for (const [i, { method, part, value }] of messages.entries()) {
    const typed = `${part === 'params' ? 'Params' : 'Result'}<'${method}'> = ${JSON.stringify(value)};`;
    if (!firsts.has(typed)) firsts.set(typed, i);
  }
  const lines = [...firsts.keys()];
  const host = ts.createCompilerHost(OPTIONS);
  const source = HEAD + lines.map((typed, i) => `export const m${i}: ${typed}`).join('\n');
  const isOurs = (name: string) => path.resolve(name) === FILE;
  const program = ts.createProgram([FILE], OPTIONS, {
    ...host,
    fileExists: name => isOurs(name) || host.fileExists(name),
    getSourceFile(name, version, ...more) {
      if (isOurs(name)) return ts.createSourceFile(name, source, version, true);
      if (!read.has(name)) read.set(name, host.getSourceFile(name, version, ...more));
      return read.get(name);
    },
  });
  const before = HEAD.split('\n').length - 1;
  return ts.getPreEmitDiagnostics(program).map(({ messageText, file, start }) => {
    const line = file?.fileName === FILE ? file.getLineAndCharacterOfPosition(start ?? 0).line - before : -1;
    const text = ts.flattenDiagnosticMessageText(messageText, '\n  ');
    return { of: firsts.get(lines[line] ?? ''), text: `${lines[line]?.slice(0, 400) ?? file?.fileName}\n  ${text}` };
  });
}

/** Places and lengths that are no whole number from 0 on: to the compiler they are numbers like any other. */
export function wrongNumbers(value: unknown, within = ''): string[] {
  if (Array.isArray(value)) return value.flatMap((each, i) => wrongNumbers(each, `${within}[${i}]`));
  if (typeof value === 'object' && value !== null) {
    return Object.entries(value).flatMap(([name, each]) => wrongNumbers(each, `${within}.${name}`));
  }
  return typeof value !== 'number' || (Number.isInteger(value) && value >= 0) ? [] : [`${within}: ${value}`];
}
