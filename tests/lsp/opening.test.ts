import { describe, expect, onTestFinished, test, vi } from 'vitest';
import type { Hover } from 'vscode-languageserver';
import { ROUND_TRIP } from '../../server/src/lsp/turns.ts';
import { inSession, type Session } from '../support/lsp-client.ts';

const settings = { asOf: '2026-02-01' };
const long = `sowed V-1\n${'# the cold bench\n'.repeat(60_000)}count W-1 2026-01-20, 3\nlot V-1 Iris, 60 seeds\nsoak V-1 2026-01-10 19:00, water, 30 h\n`;
const all = ['unknown-keyword', 'unknown-lot', 'soak-too-long'];

/** Turns of the loop that come when they are taken, until they are let go. */
function heldTurns() {
  const turns: (() => void)[] = [];
  let isHeld = true;
  const later = (work: () => void) => {
    if (isHeld) turns.push(work);
    else setImmediate(work);
  };
  const letGo = () => {
    isHeld = false;
    for (const work of turns.splice(0)) work();
  };
  return { later, take: () => turns.shift()?.(), letGo };
}

/** The server has taken what it was sent when it has answered the next question. */
const passed = (session: Session) => session.ask('rain', {}).catch(() => undefined);

describe('a long text that is opened', () => {
  test('shows what is wrong with its first lines while the rest is read, and then all', () => inSession({ settings }, async session => {
    await session.open('a.germ', long);
    await session.shows('a.germ', all);
    const codes = session.published.map(({ diagnostics }) => diagnostics.map(({ code }) => code));
    expect(codes[0]).toEqual(['unknown-keyword']);
  }));

  test('shows no mistake in a version that does not count, though the mark that says so comes late', () => inSession(
    { settings }, async session => {
      const comments = '# the cold bench\n'.repeat(60_000);
      await session.open('a.germ', `sowed V-1\n<<<<<<< ours\nlot V-1 Iris\n=======\nlto V-1 Iris\n${comments}>>>>>>> theirs\n`);
      await session.shows('a.germ', ['unknown-keyword', 'merge-conflict']);
      expect(session.published.map(({ diagnostics }) => diagnostics.length)).toEqual([2]);
    }));

  test('is answered about when all of it is known', () => inSession({ settings }, async session => {
    await session.open('a.germ', long);
    const position = { line: 60_003, character: 6 };
    const hover = await session.ask<Hover>('textDocument/hover', { textDocument: { uri: session.uri('a.germ') }, position });
    expect(JSON.stringify(hover.contents)).toContain('60 seeds');
    expect(JSON.stringify(hover.contents)).not.toContain('still reading');
    expect(await session.ask('plumule/summary', {})).toMatchObject({ files: 1, lots: 1 });
  }));

  test('is answered about when all of it is known, however long that takes', () => {
    const { later, letGo } = heldTurns();
    return inSession({ settings, later }, async session => {
      await session.open('a.germ', long);
      const params = { textDocument: { uri: session.uri('a.germ') }, position: { line: 60_003, character: 6 } };
      vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
      onTestFinished(() => {
        vi.useRealTimers();
      });
      let answer: Hover | null | undefined;
      const asked = session.ask<Hover | null>('textDocument/hover', params).then(found => (answer = found));
      for (let round = 0; round < 5; round++) {
        await passed(session);
        await vi.advanceTimersByTimeAsync(60_000);
      }
      expect(answer).toBeUndefined();
      vi.useRealTimers();
      letGo();
      expect(JSON.stringify(await asked)).toContain('60 seeds');
    });
  });

  test('takes an edit of any of its lines before it is read to the end', () => inSession({ settings }, async session => {
    await session.open('a.germ', long);
    await session.until(() => session.published.length > 0, () => 'nothing is shown');
    await session.change('a.germ', 2, [60_001, 6, 7], 'V');
    await session.change('a.germ', 3, [0, 0, 5], '#');
    await session.shows('a.germ', ['soak-too-long']);
  }));

  test('is edited on its first screen without the rest being read first', () => {
    const { later, take, letGo } = heldTurns();
    return inSession({ settings, later }, async session => {
      await session.open('a.germ', `${long}sowed V-1\n`);
      await session.change('a.germ', 2, [0, 0, 5], 'sawn');
      await passed(session);
      while (session.published.length === 0) {
        take();
        await passed(session);
      }
      expect(session.published[0]!.diagnostics.map(({ message }) => message)).toEqual([expect.stringContaining('sawn')]);
      letGo();
      await session.shows('a.germ', [...all, 'unknown-keyword']);
    });
  });

  test('is gone when it is closed before it is read to the end, and can be opened again', () => inSession(
    { settings, folder: false }, async session => {
      await session.open('a.germ', long);
      await session.until(() => session.published.length > 0, () => 'nothing is shown');
      await session.close('a.germ');
      await session.shows('a.germ', []);
      expect(await session.ask('plumule/summary', {})).toMatchObject({ files: 0, lots: 0 });
      await session.open('a.germ', long);
      await session.shows('a.germ', all);
    }));

  test('falls back to what the disk has when it is closed before it is read to the end', () => inSession(
    { settings, files: { 'a.germ': 'lot D-1 Iris, 5 seeds\nsowed D-1\n' } }, async session => {
      await session.open('a.germ', long);
      await session.until(() => session.published.length > 0, () => 'nothing is shown');
      await session.close('a.germ');
      await session.until(() => session.shown('a.germ')?.[0]?.range.start.line === 1, () => JSON.stringify(session.shown('a.germ')));
      expect(session.codes('a.germ')).toEqual(['unknown-keyword']);
      expect(await session.ask('plumule/summary', {})).toMatchObject({ files: 1, lots: 1 });
    }));
});

/** Lots enough for many turns of checking, each soaked for too long. */
const lots = Array.from({ length: 1500 }, (_, n) => `lot V-${n} Iris, 60 seeds\nsoak V-${n} 2026-01-10 19:00, water, 30 h\n`).join('');

describe('a long text whose lots are being checked', () => {
  test('is answered at once when somebody types, and checked to its end however fast they type', () => {
    const { later, take } = heldTurns();
    const capabilities = { textDocument: { publishDiagnostics: { versionSupport: true } } };
    return inSession({ settings, later, capabilities }, async session => {
      const turn = async () => {
        await passed(session);
        take();
        await passed(session);
      };
      await session.open('a.germ', `# bench\n${'\n'.repeat(5000)}${lots}`);
      let [version, longest] = [1, 0];
      while (session.codes('a.germ').length === 0) {
        await session.change('a.germ', ++version, [0, 0, 0], '#');
        let turns = 0;
        for (; session.published.at(-1)?.version !== version; turns++) await turn();
        longest = Math.max(longest, turns);
      }
      expect(session.codes('a.germ')).toContain('soak-too-long');
      expect(version).toBeGreaterThan(9);
      // So many turns are left to others while the text is read and its lots are checked, by either.
      expect(longest).toBeLessThanOrEqual(2 * ROUND_TRIP);
    });
  });
});
