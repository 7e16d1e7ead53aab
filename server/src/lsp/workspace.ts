/**
 * The journals of the editor's window. Each workspace folder is one journal. A file outside every folder belongs to a
 * journal of the files in its own directory, no deeper: opening one file must not search a home directory. What else is
 * open, the old side of a difference for one, is a text by itself and makes no journal.
 */
import { URI } from 'vscode-uri';
import type { JournalText } from '../journal/journal-file.ts';
import type { LimitSettings } from '../journal/settings.ts';
import type { Range } from '../text/line-store.ts';
import { folderKeyOf, isInside, isJournalBelow, keyOf, ownerOf, type Owner } from './addresses.ts';
import type { Files } from './files.ts';
import { Intake, type Pace } from './intake.ts';
import { Room } from './room.ts';
import type { Later } from './turns.ts';

export interface FolderChange {
  readonly added: readonly string[];
  readonly removed: readonly string[];
}

export interface Found {
  readonly room: Room;
  /** The document's name in its journal. */
  readonly file: string;
}

export class Workspace {
  readonly #folders = new Set<string>();
  /** By `roomKey`; at every moment each document is in the room of its owner and in no other. */
  readonly #rooms = new Map<string, Room>();
  /** Open documents: their text comes from the editor, never from the disk. Key to the client's own spelling. */
  readonly #open = new Map<string, string>();
  /** The latest read that is under way of each file. */
  readonly #reads = new Map<string, number>();
  #turn = 0;
  readonly #said = new Set<string>();
  readonly #files: Files;
  readonly #changed: (room: Room, file?: string) => void;
  readonly #failed: (message: string) => void;
  readonly #intake: Intake;
  #settings: LimitSettings = {};

  /**
   * `changed` is called for every change of a journal, `failed` for files that cannot be read. `later` runs work at the
   * next turn of the loop; `pace` is for tests.
   */
  constructor(
    files: Files, changed: (room: Room, file?: string) => void, failed: (message: string) => void, later: Later,
    pace?: Pace,
  ) {
    this.#intake = new Intake(changed, file => this.isOpen(file), later, pace);
    this.#files = files;
    this.#changed = changed;
    this.#failed = failed;
  }

  /** The journals. */
  get rooms(): Iterable<Room> {
    return [...this.#rooms.values()].filter(({ kind }) => kind !== 'alone');
  }

  /** Folders come and go; every document moves to whom it belongs then. */
  changeFolders({ added, removed }: FolderChange): void {
    const before = new Set(this.#folders);
    for (const uri of removed) this.#folders.delete(folderKeyOf(uri));
    for (const uri of added) this.#folders.add(folderKeyOf(uri));
    const moving = this.#letGo();
    for (const folder of this.#folders) if (!before.has(folder)) this.#addRoom({ kind: 'folder', folder });
    // What lay in a folder within a folder belongs to the outer one again.
    const bare = [...before].filter(folder => !this.#folders.has(folder));
    for (const folder of before) {
      const room = this.#rooms.get(roomKey({ kind: 'folder', folder }));
      if (room && bare.some(gone => isInside(gone, folder))) this.#look(room);
    }
    for (const [key, text] of moving) this.#put(this.#roomFor(key), key, text);
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
    this.#put(this.#roomFor(key), key, text);
    return () => {
      const file = this.#roomOf(key)?.journal.files.get(key);
      if (!file) throw new RangeError(`${uri} is not open`);
      this.#intake.finish(key);
      return file.text;
    };
  }

  edit(uri: string, range: Range, text: string): void {
    const key = keyOf(uri);
    const room = this.#roomFor(key);
    this.#intake.edit(room, key, range, text);
    this.#changed(room, key);
  }

  /** A closed document falls back to what the disk has; a loose directory is let go with its last one. */
  close(uri: string): void {
    const key = keyOf(uri);
    this.#open.delete(key);
    const room = this.#roomOf(key);
    if (!room) return;
    if (this.#isNeeded(room)) void this.#reload(room, key);
    else this.#letGo();
  }

  /** A file came, went or changed outside the editor. */
  followDisk(uri: string): void {
    const key = keyOf(uri);
    const room = this.#roomOf(key);
    // Beside a document outside every folder other files lie, too.
    if (room && !this.#open.has(key) && isJournalBelow(key.slice(room.folder.length))) void this.#reload(room, key);
  }

  /** A folder on the disk came, went, or has another name. */
  followFolder(uri: string): void {
    const key = folderKeyOf(uri);
    for (const room of this.rooms) {
      if (room.folder === key || isInside(key, room.folder) || isInside(room.folder, key)) this.#look(room);
    }
  }

  /** The journal that a file belongs to; undefined for a file that none holds. */
  find(uri: string): Found | undefined {
    const found = this.findText(uri);
    return found?.room.kind === 'alone' ? undefined : found;
  }

  /** As `find`, but of a text by itself too. */
  findText(uri: string): Found | undefined {
    const file = keyOf(uri);
    const room = this.#roomOf(file);
    return room?.journal.files.has(file) ? { room, file } : undefined;
  }

  /** The address of a file of a journal as the client spells it. */
  uriOf(file: string): string {
    return this.#open.get(file) ?? file;
  }

  isOpen(file: string): boolean {
    return this.#open.has(file);
  }

  /** Whether all of a file's text is in its journal, and not its first part alone. */
  isWhole(file: string): boolean {
    return this.#intake.whole(file) === undefined;
  }

  /** Resolves when all of a document's text is in its journal. */
  async whole(uri: string): Promise<void> {
    await this.#intake.whole(keyOf(uri));
  }

  #roomOf(key: string): Room | undefined {
    return this.#rooms.get(roomKey(ownerOf(key, this.#folders)));
  }

  #roomFor(key: string): Room {
    return this.#roomOf(key) ?? this.#addRoom(ownerOf(key, this.#folders));
  }

  #owns(room: Room, key: string): boolean {
    return roomKey(ownerOf(key, this.#folders)) === roomKey(room);
  }

  /** Whether a room is there for a folder, or else for a document that is open. */
  #isNeeded(room: Room): boolean {
    if (room.kind === 'folder') return this.#folders.has(room.folder);
    return [...this.#open.keys()].some(key => this.#owns(room, key));
  }

  /**
   * Takes every file out of a room that is not its owner, and drops the rooms that nothing needs. Gives the texts of
   * open documents, which need a new place at once.
   */
  #letGo(): Map<string, string> {
    const moving = new Map<string, string>();
    for (const room of [...this.#rooms.values()]) {
      const isNeeded = this.#isNeeded(room);
      if (!isNeeded) this.#rooms.delete(roomKey(room));
      for (const [name, { text }] of [...room.journal.files]) {
        if (isNeeded && this.#owns(room, name)) continue;
        if (this.#open.has(name)) moving.set(name, this.#intake.textOf(name) ?? text.text());
        this.#put(room, name, undefined);
      }
    }
    return moving;
  }

  #addRoom(owner: Owner): Room {
    const room = new Room(owner, this.#settings);
    this.#rooms.set(roomKey(owner), room);
    if (room.kind !== 'alone') this.#look(room);
    return room;
  }

  #look(room: Room): void {
    room.await(this.#readFolder(room));
  }

  async #readFolder(room: Room): Promise<void> {
    const { folder, kind, journal } = room;
    let found = new Set<string>();
    try {
      // Documents that are open already are in the journal or will be put there; the first turn belongs to them.
      const { files, faults } = await this.#files.list(folder, kind === 'folder');
      for (const fault of faults) this.#say(fault);
      found = new Set(files.map(keyOf));
    } catch (error) {
      // A file that was never saved has no directory to look into.
      if (URI.parse(folder).scheme !== 'untitled') this.#say(`${folder}: ${messageOf(error)}`);
    }
    // What is not in the list is gone, or came while it was made: the file itself tells.
    const unlisted = [...journal.files.keys()].filter(key => !found.has(key) && !this.#open.has(key));
    const unread = [...found].filter(key => !journal.files.has(key));
    for (const key of [...unlisted, ...unread]) {
      // The file in front of the grower is not to wait for a thousand others.
      await this.#intake.open();
      if (this.#rooms.get(roomKey(room)) !== room) return;
      if (this.#owns(room, key)) await this.#reload(room, key);
    }
  }

  async #reload(room: Room, key: string): Promise<void> {
    const turn = ++this.#turn;
    this.#reads.set(key, turn);
    let text: string | undefined;
    try {
      text = await this.#files.read(key, room.folder);
    } catch (error) {
      this.#say(`${key}: ${messageOf(error)}`);
    }
    // A disk may answer the later question first.
    if (this.#reads.get(key) !== turn) return;
    this.#reads.delete(key);
    // The document may have been opened, or the folder closed, while the disk was read.
    if (!this.#open.has(key) && this.#roomOf(key) === room) this.#put(room, key, text);
    await this.#intake.whole(key);
  }

  /** Once: a folder is looked into again and again. */
  #say(message: string): void {
    if (this.#said.has(message)) return;
    this.#said.add(message);
    this.#failed(message);
  }

  /** Takes a text over; without one the file is gone. */
  #put(room: Room, key: string, text: string | undefined): void {
    // Opened while it was taken in from the disk, as a rule: it goes on.
    if (text === undefined || this.#intake.textOf(key) !== text) {
      this.#intake.drop(key);
      if (text === undefined) room.journal.remove(key);
      else if (room.journal.files.has(key)) room.journal.set(key, text);
      else this.#intake.begin(room, key, text);
    }
    this.#changed(room, key);
  }
}

function roomKey({ kind, folder }: Owner): string {
  return `${kind} ${folder}`;
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
