import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { parse, type DefaultTreeAdapterTypes as Tree } from 'parse5';
import { describe, expect, it } from 'vitest';
import { publishedSite } from '../../server/src/cli/publish.ts';
import type { Private } from '../../server/src/model/privates.ts';
import { SEARCH, SEARCH_HASH } from '../../server/src/publish/search.ts';
import { at } from '../report/helpers.ts';
import { journal } from '../support/arbitrary-journal.ts';
import { readFixture, type FixtureFile } from '../support/fixture.ts';
import { anyJournal, sourceOf } from '../tables/helpers.ts';

async function siteOf(files: readonly FixtureFile[], shown: Private[] = []): Promise<Map<string, string>> {
  const { journal: read } = sourceOf(files);
  const { files: all } = await publishedSite({ journal: read, now: at('2026-06-01', 12), folder: '.' }, { title: 'Seed <journal>', with: shown });
  return new Map(all.map(({ name, content }) => [name, String(content)]));
}

function* elementsOf(node: Tree.ParentNode): Generator<Tree.Element> {
  for (const child of node.childNodes) {
    if (!('tagName' in child)) continue;
    yield child;
    yield* elementsOf(child);
  }
}

function attribute({ attrs }: Tree.Element, name: string): string | undefined {
  return attrs.find(each => each.name === name)?.value;
}

const MARK = 'zqxprivate';

/** Lines about things that are private, and lines with mistakes that hold such words. */
const secrets = fc.subarray([
  `photo LOT-1 2025-10-03, ${MARK}/a.jpg`, `due LOT-1 2026-05-03, ${MARK}`, `note G1 2025-10-03, ${MARK}`,
  `give LOT-1 2026-03-01, 1 seedlings, to ${MARK}`, `send LOT-1 2026-03-01, 1 seeds, to "${MARK}, and more"`,
  `plant LOT-1 2026-03-01, in ${MARK}`, `lose LOT-1 2026-03-02, to ${MARK}`, `guide Primula, GA3 900 ppm, source "${MARK}, p. 3"`,
  `agent kelp, ${MARK}`, `scarify LOT-1 2025-10-02, ${MARK}`, `discard LOT-1 2026-04-01, ${MARK}`,
  `sow LOT-1 2025-10-02, at ${MARK} room`, `move LOT-1 2025-10-04, at ${MARK} bag 3 slot 2`, `move LOT-1 2025-10-05, at ${MARK} sill, outdoors`,
  `stock S9 2025-10-01, GA3 20 mg, 20 mL, at ${MARK}`, `powder P9 2025-10-01, GA3 1 g, at ${MARK}`,
  `${MARK} is a word`, `count LOT-1 2025-10-09, 1 ${MARK}`, `count LOT-1 2025-10-09 ${MARK}`, `count LOT-1 31.2.2026, 1, ${MARK}`,
  `note LOT-1, ${MARK}`, `judge LOT-1 2025-10-01, on ${MARK}`, '<<<<<<< ours',
  `note LOT-1 2025-10-03, ${MARK} ours`, '=======', `note LOT-1 2025-10-03, ${MARK} theirs`, `>>>>>>> ${MARK}`, `# ${MARK}`, `  ${MARK}`,
]);

/** Journals in which the mark stands wherever something private can. */
const marked = fc.tuple(journal, secrets, fc.nat()).map(([drawn, more, n]) => drawn.files.map(({ name, text }, i) => {
  const all = text.split('\n').map(line => line
    .replace(/^ {2}.*/, `  ${MARK}, ${MARK}`).replace(/^#.*/, `# ${MARK}`)
    .replace('from own garden', `from ${MARK}, stored at ${MARK}, at ${MARK} shelf`)
    .replace('at jar', `at ${MARK} jar 4`).replace('in grit', `in grit, at ${MARK} tray ${line.length}`)
    .replace('still, 3 to look at', MARK).replace('all soft, or so it looked', MARK));
  if (i === 0) all.splice(n % all.length, 0, ...more);
  return { name: `${MARK}-${name}`, text: all.join('\n') };
}));

describe('pages to share', () => {
  it('hold nothing private, in no page, picture, table or name', async () => {
    await fc.assert(fc.asyncProperty(marked, async files => {
      for (const [name, content] of await siteOf(files)) expect(`${name}\n${content}`.toLowerCase()).not.toContain(MARK);
    }), { numRuns: 60 });
  });

  it('hold what is asked for, and that alone', async () => {
    const files = readFixture(`
      lot A-1 Iris alba, 20 seeds, from ${MARK}source
        ${MARK}remark
      sow A-1 2026-01-04, at ${MARK}place
      count A-1 2026-02-04, 3 germinated
      give A-1 2026-03-04, to ${MARK}person
    `).files;
    const words = { places: 'place', remarks: 'remark', sources: 'source', people: 'person' };
    for (const [shown, word] of Object.entries(words)) {
      const text = [...(await siteOf(files, [shown as keyof typeof words])).values()].join('\n');
      expect([...new Set(text.match(new RegExp(`${MARK}\\w+`, 'g')))]).toEqual([`${MARK}${word}`]);
    }
  });

  it('link to files of the site alone, and to all pages', async () => {
    await fc.assert(fc.asyncProperty(anyJournal, async files => {
      const site = await siteOf(files);
      const linked = new Set(['index.html']);
      for (const [name, content] of site) {
        if (!name.endsWith('.html')) continue;
        for (const element of elementsOf(parse(content))) {
          for (const link of ['href', 'src'].flatMap(key => attribute(element, key) ?? [])) {
            if (!link.startsWith('#')) linked.add(decodeURIComponent(link));
          }
        }
      }
      expect([...linked].filter(name => !site.has(name))).toEqual([]);
      expect([...site.keys()].filter(name => !linked.has(name))).toEqual([]);
    }), { numRuns: 25 });
  });

  it('run nothing but the search, whatever the journal is called or says', async () => {
    const site = await siteOf(readFixture(`
      lot A-1 Iris <script>alert(1)</script>, 20 seeds
      lot A-2 "></a><img src=x onerror=alert(1)>, 20 seeds
      sow A-1 2026-01-04, in "<b>grit</b>"
    `).files);
    for (const [name, content] of site) {
      if (!name.endsWith('.html')) continue;
      const elements = [...elementsOf(parse(content))];
      const scripts = elements.filter(({ tagName }) => tagName === 'script');
      expect(scripts.map(({ childNodes: [text] }) => text && 'value' in text && text.value)).toEqual(name === 'index.html' ? [SEARCH] : []);
      expect(elements.filter(({ tagName }) => ['img', 'b'].includes(tagName) && name.startsWith('lot'))).toEqual([]);
      const [policy] = elements.filter(element => attribute(element, 'http-equiv') === 'Content-Security-Policy');
      expect(attribute(policy!, 'content')).toMatch(/^default-src 'none'; /);
    }
    expect(SEARCH_HASH).toBe(`sha256-${createHash('sha256').update(SEARCH).digest('base64')}`);
    expect(site.get('index.html')).toContain(`script-src &#39;${SEARCH_HASH}&#39;`);
  });

  it('are lists in full where no script runs', async () => {
    const site = await siteOf(readFixture('lot A-1 Iris alba, 20 seeds\nlot B-1 Rosa alba, 20 seeds').files);
    const items = [...elementsOf(parse(site.get('index.html')!))].filter(element => attribute(element, 'data-words') !== undefined);
    expect(items).toHaveLength(4);
    expect(items.map(item => attribute(item, 'hidden'))).toEqual([undefined, undefined, undefined, undefined]);
  });

  it('are the same each time', async () => {
    const files = fc.sample(journal, { numRuns: 1, seed: 3 })[0]!.files;
    expect([...await siteOf(files)]).toEqual([...await siteOf(files)]);
  });
});
