/** Holds clients to the order of the protocol: `initialize` first and once, and after `shutdown` nothing but `exit`. */
import {
  ErrorCodes, Message, ResponseError, type Connection, type MessageStrategy, type RequestMessage,
} from './protocol.ts';

type State = 'new' | 'running' | 'down';

/** A refused request goes on under one of these names, since only a handler can answer it. */
const refusals = {
  'plumule/early': [ErrorCodes.ServerNotInitialized, 'The server is not initialized yet.'],
  'plumule/twice': [ErrorCodes.InvalidRequest, 'The server is already initialized.'],
  'plumule/late': [ErrorCodes.InvalidRequest, 'The server is shut down.'],
} as const;

/** Given to the library as its strategy when the connection is made, and then the connection to `serve`. */
export class Lifecycle implements MessageStrategy {
  #state: State = 'new';

  /** Whether the client has said that it will end the server. */
  get isDown(): boolean {
    return this.#state === 'down';
  }

  serve(connection: Connection): void {
    for (const [method, [code, message]] of Object.entries(refusals)) {
      connection.onRequest(method, () => new ResponseError(code, message));
    }
  }

  handleMessage(message: Message, next: (message: Message) => void | Promise<void>): void | Promise<void> {
    if (Message.isRequest(message)) {
      const method = this.#refusal(message);
      if (method !== undefined) return next({ ...message, method } as RequestMessage);
      if (message.method === 'initialize') this.#state = 'running';
      if (message.method === 'shutdown') this.#state = 'down';
    } else if (Message.isNotification(message) && message.method !== 'exit' && this.#state !== 'running') return;
    return next(message);
  }

  #refusal({ method }: RequestMessage): keyof typeof refusals | undefined {
    if (this.#state === 'down') return 'plumule/late';
    if (method === 'initialize') return this.#state === 'running' ? 'plumule/twice' : undefined;
    return this.#state === 'new' ? 'plumule/early' : undefined;
  }
}
