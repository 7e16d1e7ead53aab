/** Shows problems: one publish for a burst of changes, and only of files whose problems changed. */
import { DiagnosticSeverity, type Connection, type Diagnostic } from './protocol.ts';
import type { Found } from '../checks/check.ts';
import { problemKinds, type Problem, type ProblemCode, type Severity } from '../model/problems.ts';
import type { Moment } from '../journal/moment.ts';
import { rangeOf } from './convert.ts';
import { knownList } from './known-json.ts';
import type { Room } from './room.ts';
import { afterTurns, ROUND_TRIP, type Later } from './turns.ts';
import type { Workspace } from './workspace.ts';

/** Beyond this many a file's problems are no help, and sending them costs the typist time. */
const MOST = 1000;

/** Milliseconds of checking after which others get their turn. */
const TURN = 8;

/** Lines of a journal from which on a reader would wait for its lots to be checked for the first time. */
const LONG = 5000;

const severities: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error, warning: DiagnosticSeverity.Warning,
  information: DiagnosticSeverity.Information, hint: DiagnosticSeverity.Hint,
};

export type SeveritySettings = Readonly<Partial<Record<ProblemCode, Severity | 'off'>>>;

export interface PublisherOptions {
  readonly relatedInformation: boolean;
  /** The client matches problems to the version that they are of: it wants an answer to every version. */
  readonly versions: boolean;
}

/** The JSON of a problem as it was sent last, and what that depends on beside the problem. */
interface Written {
  readonly number: number;
  readonly severity: Severity | 'off';
  /** Where the related lines are. */
  readonly others: string;
  readonly json: string;
}

export class Publisher {
  severity: SeveritySettings = {};
  options: PublisherOptions = { relatedInformation: false, versions: false };
  /** Called when a burst of changes has been published. */
  published: () => void = () => undefined;
  readonly #connection: Connection;
  readonly #workspace: () => Workspace;
  readonly #now: (room: Room) => Moment;
  readonly #version: (uri: string) => number | undefined;
  readonly #later: Later;
  readonly #dirty = new Map<Room, Set<string>>();
  /** What the client shows of each file, as it was sent: the JSON of each problem. */
  readonly #shown = new Map<string, readonly string[]>();
  readonly #written = new WeakMap<Problem, Written>();
  /** The version of each file for which something was sent last. */
  readonly #answered = new Map<string, number>();
  /** Those whose lots were checked, or are checked now. */
  readonly #begun = new WeakSet<Room>();
  /** Those whose lots have waited for their turn: something else was published before. */
  readonly #due = new WeakSet<Room>();
  #waiting = false;

  /** `later` runs work at the next turn of the loop. */
  constructor(
    connection: Connection, workspace: () => Workspace, now: (room: Room) => Moment,
    version: (uri: string) => number | undefined, later: Later,
  ) {
    this.#later = later;
    this.#connection = connection;
    this.#workspace = workspace;
    this.#now = now;
    this.#version = version;
  }

  /** Something in a journal changed; `file` is where the edit was. Problems follow when the burst is over. */
  changed(room: Room, file?: string): void {
    const files = this.#dirty.get(room) ?? new Set<string>();
    if (file !== undefined) files.add(file);
    this.#dirty.set(room, files);
    if (this.#waiting) return;
    this.#waiting = true;
    // A turn of the loop later: whatever else the client has sent by then is one change with this.
    this.#later(() => {
      if (this.#waiting) this.#publishAll(true);
    });
  }

  /** Publishes at once what waits to be published. */
  flush(): void {
    if (this.#waiting) this.#publishAll(false);
  }

  /** Forgets what a file shows, so that it is sent again: a client may have dropped it with the closed document. */
  forget(file: string): void {
    if (this.#shown.has(file)) this.#shown.set(file, ['?']);
    this.#answered.delete(file);
  }

  /**
   * `inTurns`: lots of a long journal that was just read are checked some at a time, and wait for a turn whenever
   * something is to be said to somebody who types: what lines say by themselves is sent first.
   */
  #publishAll(inTurns: boolean): void {
    this.#waiting = false;
    const dirty = [...this.#dirty];
    this.#dirty.clear();
    for (const [room, edited] of dirty) {
      try {
        const open = [...edited].filter(file => this.#workspace().isOpen(file));
        const lotsWait = inTurns && room.isLoaded && open.length > 0 && !this.#due.has(room) && this.#isUnchecked(room);
        // Until the other files are read, an open one shows what its lines say by themselves.
        const files = new Set(room.isLoaded && !lotsWait ? [...this.#check(room, inTurns), ...edited] : open);
        for (const file of files) this.#publish(room, file, edited.has(file));
        if (lotsWait) this.#due.add(room);
        else this.#due.delete(room);
        if (room.isLoaded && this.#isUnchecked(room)) {
          this.#checkLater(room, [...edited].filter(file => !files.has(file)));
        }
      } catch (error) {
        this.#connection.console.error(`problems of ${room.folder}: ${error instanceof Error ? error.stack ?? error.message : String(error)}`);
      }
    }
    // What others show waits for the whole of a journal.
    if (dirty.some(([room]) => room.isLoaded && !this.#isUnchecked(room))) this.published();
  }

  #check(room: Room, inTurns: boolean): ReadonlySet<string> {
    const stop = inTurns ? performance.now() + TURN : Infinity;
    this.#begun.add(room);
    return room.book.update(this.#now(room), () => performance.now() > stop);
  }

  /** Whether a reader would wait for lots that were never checked. */
  #isUnchecked(room: Room): boolean {
    return this.#begun.has(room) ? !room.book.isComplete : isLong(room);
  }

  /**
   * Checks a journal when what was published is on its way and others had their turn. `unsaid` are files to publish
   * then.
   */
  #checkLater(room: Room, unsaid: readonly string[]): void {
    this.#dirty.set(room, new Set([...unsaid, ...this.#dirty.get(room) ?? []]));
    this.#waiting = true;
    afterTurns(this.#later, ROUND_TRIP, () => {
      if (this.#waiting) this.#publishAll(true);
    });
  }

  #publish(room: Room, file: string, edited: boolean): void {
    const workspace = this.#workspace();
    const uri = workspace.uriOf(file);
    const elsewhere = workspace.find(uri)?.room ?? room;
    const problems = elsewhere === room ? this.#jsonOf(foundIn(room, file, workspace), workspace) : [];
    if (elsewhere !== room && elsewhere.journal.files.has(file)) return;
    const version = this.#version(uri);
    const wanted = this.options.versions && edited && version !== undefined && this.#answered.get(file) !== version;
    if (isSame(problems, this.#shown.get(file) ?? []) && !wanted) return;
    if (problems.length === 0) this.#shown.delete(file);
    else this.#shown.set(file, problems);
    if (version !== undefined) this.#answered.set(file, version);
    const diagnostics = knownList<Diagnostic>(`[${problems.join(',')}]`);
    void this.#connection.sendDiagnostics({ uri, diagnostics, ...(version !== undefined && { version }) });
  }

  /** The problems that are shown, each as the JSON of the protocol. */
  #jsonOf(found: readonly Found[], workspace: Workspace): string[] {
    const shown = found.filter(({ problem }) => this.#severityOf(problem.code) !== 'off');
    const problems = shown.slice(0, MOST).map(item => this.#problemJson(item, workspace));
    const more = shown.length - MOST;
    if (more <= 0) return problems;
    const notice = `${more === 1 ? '1 more problem in this file is' : `${more} more problems in this file are`} not shown.`;
    const last = shown[MOST - 1]!;
    const message = `${last.problem.message} ${notice}`;
    return [...problems.slice(0, -1), JSON.stringify({ ...this.#diagnosticOf(last, workspace), message })];
  }

  /** Most problems of a file stay as they are when one line is edited. */
  #problemJson(found: Found, workspace: Workspace): string {
    const { line: { number }, problem, related } = found;
    const severity = this.#severityOf(problem.code);
    const others = related.map(({ line }) => `${line.number} ${workspace.uriOf(line.store.name)}`).join('\n');
    const before = this.#written.get(problem);
    if (before?.number === number && before.severity === severity && before.others === others) return before.json;
    const json = JSON.stringify(this.#diagnosticOf(found, workspace));
    this.#written.set(problem, { number, severity, others, json });
    return json;
  }

  #diagnosticOf({ line, problem, related }: Found, workspace: Workspace): Diagnostic {
    const severity = this.#severityOf(problem.code) as Severity;
    return {
      range: rangeOf({ line: line.number, start: problem.start, end: problem.end }),
      severity: severities[severity], code: problem.code, source: 'plumule', message: problem.message,
      ...(this.options.relatedInformation && related.length > 0 && {
        relatedInformation: related.map(place => ({
          location: {
            uri: workspace.uriOf(place.line.store.name),
            range: rangeOf({ line: place.line.number, start: place.start, end: place.end }),
          },
          message: place.message,
        })),
      }),
    };
  }

  #severityOf(code: ProblemCode): Severity | 'off' {
    return this.severity[code] ?? problemKinds[code].severity;
  }
}

/** Of a text that is still read, what the rest of it cannot change; how many there are cannot be told yet. */
function foundIn({ book }: Room, file: string, workspace: Workspace): Found[] {
  return workspace.isWhole(file) ? book.of(file) : book.surelyIn(file, MOST);
}

/** Texts that were kept are the same objects, and compared at once. */
function isSame(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && a.every((json, i) => json === b[i]);
}

function isLong({ journal }: Room): boolean {
  let lines = 0;
  for (const { text } of journal.files.values()) lines += text.lineCount;
  return lines > LONG;
}
