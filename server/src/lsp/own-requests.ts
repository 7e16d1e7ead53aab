/** Requests of our own client, beyond the protocol's. */
import type { CancellationToken, Connection, Position } from './protocol.ts';
import type { Direction } from '../features/neighbours.ts';
import type { MixQuestion } from '../features/mix/answer.ts';
import type { SoakQuestion } from '../features/soak/records.ts';
import type { PanelView } from '../report/panel/panel.ts';
import type { LabelSheetName } from '../report/paper/label-sheets.ts';
import { guarded } from './guard.ts';
import type { SheetAsked } from './import.ts';
import type { LotNamed } from './lots.ts';
import type { Service } from './service.ts';

/** What is sent along, where the request takes it. */
export interface Asked {
  /** The file that is being worked in. */
  readonly uri?: string | undefined;
  readonly position?: Position | undefined;
  readonly lot?: string | undefined;
  readonly lots?: readonly LotNamed[];
  readonly batches?: readonly string[];
  /** Time zone of the machine that the client runs on. */
  readonly zone?: string;
  /** Of an item of the due list. */
  readonly key?: string;
  /** Batches that were left off, instead of those that are looked after. */
  readonly leftOff?: boolean;
  /** The present, in milliseconds since 1970-01-01T00:00Z. */
  readonly stamp?: number;
  readonly question?: MixQuestion;
  readonly soak?: SoakQuestion;
  readonly sheet?: SheetAsked;
  readonly direction?: Direction;
  /** What the panel of pictures shows. */
  readonly view?: PanelView;
  /** Of the panel, in pixels. */
  readonly width?: number;
  readonly height?: number;
  /** The sheet of labels to print on. */
  readonly paper?: LabelSheetName;
}

/** Registers `plumule/<name>`: guarded, and answered when all journals have been read. */
export type OwnRequest = <Result>(name: string, otherwise: Result, work: (asked: Asked) => Result) => void;

export function ownRequests(connection: Connection, service: Service): OwnRequest {
  return (name, otherwise, work) => {
    const handler = guarded(connection, name, otherwise, async (asked: Asked) => {
      await service.ready();
      return work(asked);
    });
    connection.onRequest(`plumule/${name}`, (asked: Asked, token: CancellationToken) => handler(asked, token));
  };
}
