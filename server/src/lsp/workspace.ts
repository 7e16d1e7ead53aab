/**
 * The journals of the editor's window. Each workspace folder is one journal. A file outside every folder belongs to a
 * journal of the files in its own directory, no deeper: opening one file must not search a home directory.
 */
import { URI, Utils } from 'vscode-uri';
import { ProblemBook } from '../checks/problem-book.ts';
import { Journal } from '../journal/journal.ts';
import type { JournalText } from '../journal/journal-file.ts';
import type { LimitSettings } from '../journal/settings.ts';
import type { Range } from '../text/line-store.ts';
import type { Files } from './files.ts';

/** One journal with its problems. */
export interface Room {
  readonly folder: string;
  /** Whether it takes in subfolders. */
  readonly deep: boolean;
  readonly journal: Journal;
  readonly book: ProblemBook;
  readonly loaded: Promise<void>;
}

export class Workspace {
  readonly #rooms = new Map<string, Room>();
  /** Open documents: their text comes from the editor, never from the disk. Key to the client's own spelling. */
  readonly #open = new Map<string, string>();
  readonly #files: Files;
  readonly #changed: (room: Room, file?: string) => void;
  readonly #failed: (message: string) => void;
  #settings: LimitSettings = {};

  /** `changed` is called for every change of a journal, `failed` for files that cannot be read. */
  constructor(files: Files, changed: (room: Room, file?: string) => void, failed: (message: string) => void) {
    this.#files = files;
    this.#changed = changed;
    this.#failed = failed;
  }

  get rooms(): Iterable<Room> {
    return this.#rooms.values();
  }

  addFolder(uri: string): void {
    const folder = keyOf(uri);
    if (!this.#rooms.get(folder)?.deep) this.#addRoom(folder, true);
  }

  removeFolder(uri: string): void {
    const folder = keyOf(uri);
    const room = this.#rooms.get(folder);
    if (!room) return;
    this.#rooms.delete(folder);
    for (const name of [...room.journal.files.keys()]) {
      room.journal.remove(name);
      this.#changed(room, name);
    }
    // What is still open goes on as a loose file.
    for (const key of this.#open.keys()) if (isInside(key, folder)) void this.#reload(this.#roomFor(key), key);
  }

  set settings(settings: LimitSettings) {
    this.#settings = settings;
    for (const room of this.#rooms.values()) {
      room.journal.settings = settings;
      // Severities are settings too: every file may show its problems otherwise now.
      for (const file of room.journal.files.keys()) this.#changed(room, file);
    }
  }

  /** The text of an open document, as the editor has it; gives access to the journal's store of it. */
  open(uri: string, text: string): () => JournalText {
    const key = keyOf(uri);
    this.#open.set(key, uri);
    const room = this.#roomFor(key);
    room.journal.set(key, text);
    this.#changed(room, key);
    return () => {
      const file = this.#roomFor(key).journal.files.get(key);
      if (!file) throw new RangeError(`${uri} is not open`);
      return file.text;
    };
  }

  edit(uri: string, range: Range, text: string): void {
    const key = keyOf(uri);
    const room = this.#roomFor(key);
    room.journal.edit(key, range, text);
    this.#changed(room, key);
  }

  /** A closed document falls back to what the disk has; a loose directory is let go with its last one. */
  close(uri: string): void {
    const key = keyOf(uri);
    this.#open.delete(key);
    const room = this.#roomFor(key);
    const inUse = room.deep || [...this.#open.keys()].some(open => this.#find(open) === room);
    if (!inUse) this.removeFolder(room.folder);
    else void this.#reload(room, key);
  }

  /** A file came, went or changed outside the editor. */
  followDisk(uri: string): void {
    const key = keyOf(uri);
    const room = this.#find(key);
    if (room && !this.#open.has(key)) void this.#reload(room, key);
  }

  /** The journal that a file belongs to, and the file's name in it; undefined for a file that it does not hold. */
  find(uri: string): { room: Room; file: string } | undefined {
    const file = keyOf(uri);
    const room = this.#find(file);
    return room?.journal.files.has(file) ? { room, file } : undefined;
  }

  /** The address of a file of a journal as the client spells it. */
  uriOf(file: string): string {
    return this.#open.get(file) ?? file;
  }

  isOpen(file: string): boolean {
    return this.#open.has(file);
  }

  #find(key: string): Room | undefined {
    let best: Room | undefined;
    for (const room of this.#rooms.values()) {
      const inside = room.deep ? isInside(key, room.folder) : Utils.dirname(URI.parse(key)).toString() === room.folder;
      if (inside && (!best || room.folder.length > best.folder.length)) best = room;
    }
    return best;
  }

  #roomFor(key: string): Room {
    return this.#find(key) ?? this.#addRoom(Utils.dirname(URI.parse(key)).toString(), false);
  }

  #addRoom(folder: string, deep: boolean): Room {
    const journal = new Journal();
    journal.settings = this.#settings;
    const room: Room = { folder, deep, journal, book: new ProblemBook(journal), loaded: Promise.resolve() };
    const loading: Room = { ...room, loaded: this.#load(room) };
    this.#rooms.set(folder, loading);
    return loading;
  }

  async #load({ folder, deep, journal }: Room): Promise<void> {
    // Documents that are open already are in the journal or will be put there; the first turn belongs to them.
    const uris = await this.#files.list(folder, deep).catch((error: unknown) => {
      // A file that was never saved has no directory to look into.
      if (URI.parse(folder).scheme !== 'untitled') this.#failed(`${folder}: ${messageOf(error)}`);
      return [];
    });
    for (const uri of uris) {
      const key = keyOf(uri);
      const room = this.#rooms.get(folder);
      if (room?.journal !== journal) return;
      if (!journal.files.has(key) && this.#find(key) === room) await this.#reload(room, key);
    }
  }

  async #reload(room: Room, key: string): Promise<void> {
    let text: string | undefined;
    try {
      text = await this.#files.read(key);
    } catch (error) {
      this.#failed(`${key}: ${messageOf(error)}`);
    }
    // The document may have been opened, or the folder closed, while the disk was read.
    if (this.#open.has(key) || this.#find(key)?.journal !== room.journal) return;
    if (text === undefined) room.journal.remove(key);
    else room.journal.set(key, text);
    this.#changed(room, key);
  }
}

/** One spelling for an address, however a client encodes it. */
function keyOf(uri: string): string {
  return URI.parse(uri).toString();
}

export function isInside(key: string, folder: string): boolean {
  return key.startsWith(folder.endsWith('/') ? folder : `${folder}/`);
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
