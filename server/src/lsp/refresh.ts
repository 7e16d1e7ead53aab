/** Asks the client to fetch again what it shows: another file, the day, or a setting has changed it. */
import { CodeLensRefreshRequest, type ClientCapabilities, type Connection } from './protocol.ts';

/** Milliseconds without a change before the client is asked. */
const QUIET = 400;

export class Refresher {
  readonly #connection: Connection;
  readonly #client: () => ClientCapabilities;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(connection: Connection, client: () => ClientCapabilities) {
    this.#connection = connection;
    this.#client = client;
  }

  /** Something changed that the client may show elsewhere. */
  changed(): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.#ask(), QUIET);
  }

  stop(): void {
    clearTimeout(this.#timer);
  }

  async #ask(): Promise<void> {
    const { codeLens, inlayHint, semanticTokens } = this.#client().workspace ?? {};
    const { languages } = this.#connection;
    try {
      if (semanticTokens?.refreshSupport) await languages.semanticTokens.refresh();
      if (inlayHint?.refreshSupport) await languages.inlayHint.refresh();
      if (codeLens?.refreshSupport) await this.#connection.sendRequest(CodeLensRefreshRequest.type);
    } catch (error) {
      this.#connection.console.warn(`refresh: ${error instanceof Error ? error.message : String(error)}`);
    }
  }
}
