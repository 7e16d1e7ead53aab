/** What the requests need of the server. */
import type { ClientCapabilities } from './protocol.ts';
import type { SinceCommit } from '../features/since-commit.ts';
import type { Journal } from '../journal/journal.ts';
import type { Moment } from '../journal/moment.ts';
import type { ThemeName } from '../pictures/theme.ts';
import type { PictureFound } from './files.ts';
import type { Settings } from './settings.ts';
import type { Room } from './room.ts';
import type { Found } from './workspace.ts';

/** One journal at one moment, as a single request sees it. */
export interface Snapshot {
  readonly journal: Journal;
  readonly room: Room;
  /** The document's name in the journal. */
  readonly file: string;
  readonly now: Moment;
}

export interface Service {
  /** What holds a document, a text by itself included, once its other files are read; undefined for one not ours. */
  snapshot(uri: string): Promise<Snapshot | undefined>;
  /** Resolves when the settings have come and all journals have been read. */
  ready(): Promise<void>;
  /** Brings the problems up to date with changes of this very moment. */
  check(): void;
  /** The journal that holds a file. */
  find(uri: string): Found | undefined;
  rooms(): Iterable<Room>;
  now(room: Room): Moment;
  uriOf(file: string): string;
  versionOf(uri: string): number | undefined;
  client(): ClientCapabilities;
  settings(): Settings;
  /** Commands that the client has beside the protocol's own. */
  commands(): ReadonlySet<string>;
  /** Whether the client shows pictures in hovers, and the grower wants them. */
  showsPictures(): boolean;
  /** The colours of the pictures that the client can show; undefined where it cannot, or the grower wants none. */
  theme(): ThemeName | undefined;
  /** What changed in a journal since its files were committed last; nothing where the client does not say. */
  sinceCommit(snapshot: Snapshot): SinceCommit;
  findPicture(uri: string, folder: string): Promise<PictureFound>;
}
