/** Tells the server what the journals were at the last commit, as the editor's own git has it. */
import { commands, Disposable, extensions, Uri, workspace, type Event } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { CommittedFiles } from '../../server/src/lsp/committed.ts';

/** What is used of the extension `vscode.git`, version 1 of what it exports. */
interface Git {
  readonly repositories: readonly Repository[];
  readonly onDidOpenRepository: Event<Repository>;
  readonly onDidCloseRepository: Event<Repository>;
  getRepository(uri: Uri): Repository | null;
}

interface Repository {
  readonly state: {
    readonly HEAD: { readonly commit?: string } | undefined;
    readonly workingTreeChanges: readonly Change[];
    readonly indexChanges: readonly Change[];
    readonly mergeChanges: readonly Change[];
    readonly untrackedChanges: readonly Change[];
    readonly onDidChange: Event<void>;
  };
  buffer(ref: string, path: string): Promise<Uint8Array>;
}

interface Change {
  readonly uri: Uri;
  /** Its name at the last commit. */
  readonly originalUri: Uri;
  readonly status: number;
}

/** A file as it was at a commit. */
interface Committed {
  /** The commit and the path; '' for a file that no commit has. */
  readonly key: string;
  /** Undefined where it cannot be read. */
  readonly text: Promise<string | undefined>;
}

const EMPTY: Committed = { key: '', text: Promise.resolve('') };

/** Statuses of files that no commit has: added to the index, untracked, intent to add. */
const NEW = [1, 7, 9];

/** Git is asked when it has been quiet for so long (ms): an action of it comes as several changes. */
const QUIET = 300;

/** Registers the way from a lens to the difference, and follows what is committed. */
export function followCommits(client: BaseLanguageClient): Disposable {
  const commits = new Commits(client);
  void commits.start();
  return Disposable.from(commits, commands.registerCommand('plumule.changes', (uri: unknown) => {
    if (typeof uri === 'string') void commands.executeCommand('git.openChange', Uri.parse(uri));
  }));
}

class Commits {
  readonly #client: BaseLanguageClient;
  readonly #following: Disposable[] = [];
  readonly #repositories = new Map<Repository, Disposable>();
  /** By commit and path. */
  #texts = new Map<string, Committed['text']>();
  #git: Git | undefined;
  #sent = '';
  #waiting: ReturnType<typeof setTimeout> | undefined;

  constructor(client: BaseLanguageClient) {
    this.#client = client;
  }

  /** Does nothing where there is no git: in the browser, where it is turned off, or in a folder that is not trusted. */
  async start(): Promise<void> {
    const extension = extensions.getExtension<{ getAPI(version: 1): Git }>('vscode.git');
    try {
      this.#git = (await extension?.activate())?.getAPI(1);
    } catch {
      return;
    }
    const git = this.#git;
    if (!git) return;
    for (const repository of git.repositories) this.#follow(repository);
    this.#following.push(
      git.onDidOpenRepository(repository => this.#follow(repository)),
      git.onDidCloseRepository(repository => {
        this.#repositories.get(repository)?.dispose();
        this.#repositories.delete(repository);
        this.#changed();
      }),
      workspace.onDidOpenTextDocument(({ languageId }) => {
        if (languageId === 'plumule') this.#changed();
      }),
    );
  }

  dispose(): void {
    clearTimeout(this.#waiting);
    Disposable.from(...this.#following, ...this.#repositories.values()).dispose();
  }

  #follow(repository: Repository): void {
    this.#repositories.set(repository, repository.state.onDidChange(() => this.#changed()));
    this.#changed();
  }

  #changed(): void {
    clearTimeout(this.#waiting);
    this.#waiting = setTimeout(() => void this.#send(), QUIET);
  }

  async #send(): Promise<void> {
    const files = this.#files();
    const sent = JSON.stringify([...files].map(([uri, { key }]) => [uri, key]));
    // Git tells of much that changes nothing here.
    if (sent === this.#sent) return;
    this.#sent = sent;
    const texts = [...files].map(async ([uri, { text }]) => ({ uri, text: await text }));
    const known: CommittedFiles = {
      files: (await Promise.all(texts)).flatMap(({ uri, text }) => (text === undefined ? [] : [{ uri, text }])),
    };
    // Another state may have come while git was asked.
    if (sent === this.#sent) await this.#client.sendNotification('plumule/committed', known);
  }

  /** Those that git says are changed, and those that are open, which may be changed and not saved. */
  #files(): Map<string, Committed> {
    const files = new Map<string, Committed>();
    const known = this.#texts;
    this.#texts = new Map();
    const at = (repository: Repository, commit: string, { fsPath }: Uri): Committed => {
      const key = `${commit} ${fsPath}`;
      const text = known.get(key) ?? textAt(repository, commit, fsPath);
      this.#texts.set(key, text);
      return { key, text };
    };
    for (const { uri, languageId } of workspace.textDocuments) {
      const repository = languageId === 'plumule' && uri.scheme === 'file' ? this.#git?.getRepository(uri) : undefined;
      const commit = repository?.state.HEAD?.commit;
      if (repository && commit) files.set(uri.toString(), at(repository, commit, uri));
    }
    for (const repository of this.#repositories.keys()) {
      const { HEAD, workingTreeChanges, indexChanges, mergeChanges, untrackedChanges } = repository.state;
      if (!HEAD?.commit) continue;
      const changes = [...indexChanges, ...mergeChanges, ...workingTreeChanges, ...untrackedChanges];
      for (const { uri, originalUri, status } of changes) {
        if (!/\.germ$/i.test(uri.path)) continue;
        files.set(uri.toString(), NEW.includes(status) ? EMPTY : at(repository, HEAD.commit, originalUri));
      }
    }
    return files;
  }
}

/** Undefined where the commit has no such file, or one that is not UTF-8. */
async function textAt(repository: Repository, commit: string, path: string): Promise<string | undefined> {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(await repository.buffer(commit, path));
  } catch {
    return undefined;
  }
}
