/** A built server as a process, and the bytes to and from it: for tests of what a library would tidy up on the way. */
import { spawn, type ChildProcessWithoutNullStreams } from 'node:child_process';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { onTestFinished } from 'vitest';
import { StreamMessageReader } from 'vscode-languageserver/node';

/** The ways to start the server that others have; each with its arguments. */
export const servers = [['dist/server.node.cjs'], ['dist/server.node.cjs', '--stdio'], ['dist/plumule.cjs', 'serve', '--stdio']] as const;

export interface Message {
  readonly jsonrpc?: string;
  readonly id?: number | string | null;
  readonly method?: string;
  readonly params?: unknown;
  readonly result?: unknown;
  readonly error?: { readonly code: number; readonly message: string };
}

export class Wire {
  /** All that came from the server, in its order. */
  readonly received: Message[] = [];
  /** The exit code, once the process has ended. */
  readonly ended: Promise<number | null>;
  /** Answers to the server's own requests, by method. */
  readonly answers: Record<string, (params: never) => unknown> = {};
  readonly #process: ChildProcessWithoutNullStreams;
  /** Each says whether the message was the one that it waited for. */
  readonly #waiting = new Set<(message: Message) => boolean>();
  #id = 0;

  constructor([file, ...args]: readonly [string, ...string[]]) {
    const path = fileURLToPath(new URL(`../../${file}`, import.meta.url));
    if (!existsSync(path)) throw new Error(`npm run build comes first: ${file} is not there`);
    this.#process = spawn(process.execPath, [path, ...args], { stdio: 'pipe' });
    onTestFinished(() => void this.#process.kill());
    this.ended = new Promise(done => this.#process.on('exit', done));
    // The server may be gone before it has read all.
    this.#process.stdin.on('error', () => undefined);
    new StreamMessageReader(this.#process.stdout).listen(message => this.#take(message));
  }

  /** Sends bytes as they are. */
  raw(text: string): void {
    this.#process.stdin.write(text);
  }

  /** Sends a body with its header. */
  body(text: string): void {
    this.raw(`Content-Length: ${Buffer.byteLength(text)}\r\n\r\n${text}`);
  }

  send(message: Message): void {
    this.body(JSON.stringify({ jsonrpc: '2.0', ...message }));
  }

  notify(method: string, params?: unknown): void {
    this.send({ method, params });
  }

  /** The answer to a request, result or error. */
  ask(method: string, params?: unknown): Promise<Message> {
    const id = ++this.#id;
    this.send({ id, method, params });
    return this.answer(id);
  }

  answer(id: number | string | null): Promise<Message> {
    return this.message(message => message.id === id && message.method === undefined);
  }

  /** The first message like this, waited for where it has not come yet. */
  async message(wanted: (message: Message) => boolean): Promise<Message> {
    const found = this.received.find(wanted);
    if (found) return found;
    return new Promise((resolve, reject) => {
      const late = setTimeout(() => {
        reject(new Error(`not within 20 s; what came: ${JSON.stringify(this.received)}`));
      }, 20_000);
      this.#waiting.add(message => {
        if (!wanted(message)) return false;
        clearTimeout(late);
        resolve(message);
        return true;
      });
    });
  }

  async start(params: object = {}): Promise<Message> {
    const answer = await this.ask('initialize', { processId: null, rootUri: null, capabilities: {}, ...params });
    this.notify('initialized', {});
    return answer;
  }

  /** As a client ends a server; gives its exit code. */
  async stop(): Promise<number | null> {
    await this.ask('shutdown');
    this.notify('exit');
    return this.ended;
  }

  /** The other end is gone. */
  close(): void {
    this.#process.stdin.end();
  }

  #take(message: Message): void {
    this.received.push(message);
    for (const got of this.#waiting) if (got(message)) this.#waiting.delete(got);
    const { id, method, params } = message;
    if (method === undefined || id === undefined) return;
    const answer = this.answers[method];
    if (answer) this.send({ id, result: answer(params as never) ?? null });
    else this.send({ id, error: { code: -32601, message: method } });
  }
}
