import { spawn, spawnSync, type ChildProcess } from 'node:child_process';
import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from 'vitest';
import { inEditorPlace } from './editor-place.ts';

/** A client that nobody here wrote: the one built into Neovim, set up as `editors.md` says; keys are typed into it. */
const present = spawnSync('nvim', ['--version']).status === 0;
if (!present && process.env.CI === 'true') throw new Error('Neovim is not installed; .ci/run does that');

/** In place of the list in which one types a number: the first is taken. */
const CHOOSE = `
vim.ui.select = function(items, _, choose) choose(items[1]) end
`;

/** Neovim before 0.8 has the same under older names, which that page need not trouble anybody with. */
const OLDER = `
vim.g.do_filetype_lua = 1
if not vim.lsp.start then
  local client
  vim.lsp.start = function(config)
    config.on_attach = function(started)
      started.notify('workspace/didChangeConfiguration', { settings = config.settings })
    end
    client = client or vim.lsp.start_client(config)
    vim.lsp.buf_attach_client(0, client)
    vim.bo.omnifunc = 'v:lua.vim.lsp.omnifunc'
  end
  vim.lsp.buf.format = vim.lsp.buf.formatting_sync
end
`;

/** The set-up to run, the path to look for programs on, and where its own files go. */
interface Start {
  readonly init: string;
  readonly searchPath: string;
  readonly home: string;
}

class Neovim {
  readonly #process: ChildProcess;
  readonly #socket: string;

  constructor(folder: string, file: string, { init, searchPath, home }: Start) {
    this.#socket = path.join(folder, 'nvim.sock');
    const env = { ...process.env, PATH: searchPath, XDG_STATE_HOME: home, XDG_CACHE_HOME: home };
    const args = ['--headless', '--clean', '-n', '--cmd', `luafile ${init}`, '--listen', this.#socket, file];
    this.#process = spawn('nvim', args, { cwd: folder, env, stdio: 'ignore' });
  }

  /** Types, with keys by Vim's names: <CR>, <C-x>. */
  type(keys: string): void {
    this.#remote('--remote-send', keys);
  }

  /** Runs a command of Neovim's command line, from whatever mode. */
  run(command: string): void {
    this.type(`<C-\\><C-n>:${command.replaceAll('<', '<lt>')}<CR>`);
  }

  /** The value of a Vim expression; undefined while Neovim cannot say. */
  value(expression: string): unknown {
    const printed = this.#remote('--remote-expr', `json_encode(${expression})`);
    try {
      return JSON.parse(printed);
    } catch {
      return undefined;
    }
  }

  lua(expression: string): unknown {
    return this.value(`luaeval(${JSON.stringify(expression)})`);
  }

  /** Waits until an expression has a value like this; fails with what it has. */
  async has(what: () => unknown, expected: unknown): Promise<void> {
    await expect.poll(what, { timeout: 30_000, interval: 100 }).toEqual(expected);
  }

  /** Its exit code. */
  async quit(): Promise<number | null> {
    const ended = new Promise<number | null>(done => this.#process.on('exit', done));
    this.run('qa!');
    return ended;
  }

  kill(): void {
    this.#process.kill();
  }

  #remote(...args: string[]): string {
    // Neovim answers late or never while it waits for a key itself.
    const options = { encoding: 'utf8', timeout: 5000 } as const;
    const { stdout, stderr } = spawnSync('nvim', ['--server', this.#socket, ...args], options);
    // Which of the two it prints to differs between versions.
    return stdout || stderr;
  }
}

const lots = `lot VER-24 Veratrum nigrum, 60 seeds
split VER-24, A 24 seeds, B 24 seeds
`;
const bench = `soak VER-24/A 2026-01-10 19:00, GA3 500 ppm, 30 h
SOW VER-24/A   2026-01-12
count VER-24/A 2026-1-19, 3
`;

function inNeovim(work: (nvim: Neovim) => Promise<void>): Promise<void> {
  return inEditorPlace('lua', { 'lots.germ': lots, 'bench.germ': bench }, async ({ place, folder, setup, searchPath }) => {
    const init = path.join(place, 'init.lua');
    await writeFile(init, OLDER + CHOOSE + setup);
    const nvim = new Neovim(folder, 'bench.germ', { init, searchPath, home: place });
    try {
      await nvim.has(() => nvim.value('&filetype'), 'plumule');
      await work(nvim);
      expect(await nvim.quit()).toBe(0);
    } finally {
      nvim.kill();
    }
  });
}

/** Codes; those that depend on the day of the test may be among them. */
const problems = (nvim: Neovim) => nvim.lua('vim.tbl_map(function(d) return d.code or d.user_data.lsp.code end, vim.diagnostic.get(0))');
const line = (nvim: Neovim, number: number) => nvim.value(`getline(${number})`);
/** The text in the window that floats over the others. */
const floating = (nvim: Neovim) => nvim.lua(`(function()
  for _, window in ipairs(vim.api.nvim_list_wins()) do
    if vim.api.nvim_win_get_config(window).relative ~= '' then
      return table.concat(vim.api.nvim_buf_get_lines(vim.api.nvim_win_get_buf(window), 0, -1, false), ' ')
    end
  end
end)()`.replaceAll('\n', ' '));

test.skipIf(!present)('Neovim shows problems, hovers, leads to the lot and renames it in every file', () => inNeovim(async nvim => {
  await nvim.has(() => problems(nvim), expect.arrayContaining(['soak-too-long', 'bad-date']));
  // The limit is the one that the set-up gives.
  await nvim.has(
    () => nvim.lua('vim.diagnostic.get(0)[1].message'), expect.stringContaining('setting plumule.limits.soakHours'));

  nvim.run('call cursor(1, 8)');
  nvim.run('lua vim.lsp.buf.hover()');
  await nvim.has(() => floating(nvim), expect.stringContaining('Veratrum nigrum'));

  nvim.run('lua vim.lsp.buf.definition()');
  await nvim.has(() => nvim.value('[expand("%:t"), line("."), col(".")]'), ['lots.germ', 1, 5]);

  nvim.run("lua vim.lsp.buf.rename('VER-25')");
  await nvim.has(() => line(nvim, 1), 'lot VER-25 Veratrum nigrum, 60 seeds');
  await nvim.has(() => nvim.value('getbufline("bench.germ", 3)'), ['count VER-25/A 2026-1-19, 3']);
}));

test.skipIf(!present)('Neovim completes, mends a slip and formats', () => inNeovim(async nvim => {
  await nvim.has(() => problems(nvim), expect.arrayContaining(['soak-too-long', 'bad-date']));

  nvim.run('call cursor(3, 1)');
  nvim.run('lua vim.lsp.buf.code_action()');
  await nvim.has(() => line(nvim, 3), 'count VER-24/A 2026-01-19, 3');
  await nvim.has(() => problems(nvim), expect.not.arrayContaining(['bad-date']));

  nvim.run('lua vim.lsp.buf.format()');
  await nvim.has(() => line(nvim, 2), 'sow VER-24/A 2026-01-12');

  nvim.type('<C-\\><C-n>Gocount V<C-x><C-o>');
  await nvim.has(() => nvim.value('pumvisible()'), 1);
  await nvim.has(() => nvim.value('complete_info().items[0].word'), expect.stringContaining('VER-24/'));
  nvim.type('<C-y>');
  await nvim.has(() => line(nvim, 4), expect.stringMatching(/^count VER-24\/[AB]/));
}));
