/** What every request goes through, so that no journal can bring the server down or keep it silent. */
import { LSPErrorCodes, ResponseError, type CancellationToken, type Connection } from './protocol.ts';

/** A request slower than this (ms) is logged. */
const SLOW = 200;

type Handler<Params, Result> = (params: Params) => Result | Promise<Result>;

/**
 * A handler that answers `otherwise` when the work throws, with the error in the log; that says cancelled only when the
 * client cancelled; and that logs slow requests with their time.
 */
export function guarded<Params, Result>(
  connection: Connection, name: string, otherwise: Result, handler: Handler<Params, Result | ResponseError>,
): (params: Params, token: CancellationToken) => Promise<Result | ResponseError> {
  return async (params, token) => {
    const cancelled = () => new ResponseError<void>(LSPErrorCodes.RequestCancelled, `${name} was cancelled`);
    const start = performance.now();
    try {
      const result = await handler(params);
      return token.isCancellationRequested ? cancelled() : result;
    } catch (error) {
      connection.console.error(`${name}: ${error instanceof Error ? error.stack ?? error.message : String(error)}`);
      return otherwise;
    } finally {
      const time = performance.now() - start;
      if (time > SLOW) connection.console.warn(`${name} took ${Math.round(time)} ms`);
    }
  };
}
