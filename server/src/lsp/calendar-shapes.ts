/** What the calendar requests answer, as the editor's client gets it. Places are the protocol's locations. */
import type { Location, Position } from './protocol.ts';

export interface DueShown {
  /** Unique in its journal. */
  readonly key: string;
  /** Of its journal. */
  readonly folder: string;
  /** What its journal is called, where several are open. */
  readonly journal: string | undefined;
  readonly group: 'overdue' | 'today' | 'this week' | 'later' | 'long ago';
  readonly kind: string;
  readonly what: string;
  /** Empty for a round of several, which `what` names. */
  readonly id: string;
  readonly plant: string | undefined;
  readonly place: string | undefined;
  /** `2026-01-11 19:00`, without a time where none is known. */
  readonly when: string;
  readonly overdueDays: number;
  /** Of a soak: seed is in it now, and comes out then; not where the record of its end is missing. */
  readonly isRunning: boolean;
  /** In words the record that it asks for, which `plumule/write` gives; undefined where there is nothing to write. */
  readonly writes: string | undefined;
  readonly at: Location;
}

export interface PlaceShown {
  readonly name: string;
  /** What its journal is called, where several are open. */
  readonly journal: string | undefined;
  readonly places: readonly {
    readonly place: string;
    readonly slot: string | undefined;
    readonly stays: readonly {
      readonly id: string;
      readonly plant: string | undefined;
      /** What of the batch lies there, where that is not all of it: '9 seedlings'. */
      readonly what: string | undefined;
      readonly at: Location;
    }[];
  }[];
}

/** A bottle or a packet that is not gone. */
export interface StockShown {
  readonly id: string;
  /** What its journal is called, where several are open. */
  readonly journal: string | undefined;
  /** What is in it, and what is left of it, in words. */
  readonly holds: string;
  readonly left: string;
  readonly state: 'good' | 'near' | 'expired';
  /** How long it is good, in words; empty where that is not known. */
  readonly note: string;
  readonly at: Location;
}

/** A journal in which a count is due, or batches were left off. */
export interface RoundShown {
  readonly name: string;
  /** A file of it. */
  readonly uri: string;
  readonly batches: number;
}

export interface SoakShown {
  /** The same as long as the soak runs, and after a restart. */
  readonly key: string;
  /** Of its journal. */
  readonly folder: string;
  readonly batch: string;
  readonly plant: string | undefined;
  readonly place: string | undefined;
  /** When the seed is to come out, in milliseconds since 1970-01-01T00:00Z; undefined where no time was written. */
  readonly end: number | undefined;
  readonly endText: string;
  /** When the limit for soaks is reached. */
  readonly limit: number | undefined;
  readonly limitText: string;
  readonly at: Location;
}

/** Text to put into a file: the client makes an edit of it, against the version that it was made for. */
export interface Written {
  readonly uri: string;
  readonly version: number | undefined;
  readonly at: Position;
  readonly text: string;
  readonly cursor: Position;
  /** The same text as a snippet of the protocol, with a stop at the end of each record, where something is missing. */
  readonly snippet?: string;
}
