import { existsSync } from 'node:fs';
import { chromium, type Browser, type Page } from 'playwright-core';
import { afterAll, describe, expect, it, test } from 'vitest';
import { countingRound } from '../../../server/src/calendar/counting-round.ts';
import { Journal } from '../../../server/src/journal/journal.ts';
import { dayOf } from '../../../server/src/model/day.ts';
import { labelsOf, type Label } from '../../../server/src/report/paper/labels.ts';
import { labelSheets, type LabelSheetName } from '../../../server/src/report/paper/label-sheets.ts';
import { labelsPage } from '../../../server/src/report/paper/labels-page.ts';
import { roundOf, roundPage } from '../../../server/src/report/paper/round.ts';

const now = { day: dayOf(2026, 2, 10)!, minutes: undefined };
const JOURNAL = `lot GEN-25 Gentiana <lutea>, 60 seeds, collected 2025-09-20, at tin 1
split GEN-25, A 24 seeds, B 24 seeds
day 2026-01-10
soak GEN-25/A 19:00, GA3 500 ppm, 24 h, at jar 1
day 2026-01-11
sow GEN-25/A 19:10, 24 seeds, at bag 3 slot 10
sow GEN-25/B 19:10, 24 seeds, at bag 3 slot 9
count GEN-25/B, 2
lot IRI-25 Iris, 9 seeds
sow IRI-25 2026-02-01
lot OLD-20 Iris, 9 seeds
sow OLD-20 2025-02-01
discard OLD-20 2025-06-01
`;

function journalOf(text: string): Journal {
  const journal = new Journal();
  journal.set('a.germ', text);
  return journal;
}

describe('labels', () => {
  const journal = journalOf(JOURNAL);

  it('are those of the open batches in use, in the order in which one walks past them', () => {
    expect(labelsOf(journal, { now })).toEqual([
      { id: 'GEN-25/B', plant: 'Gentiana <lutea>', treatment: 'untreated', date: 'sown 2026-01-11', place: 'bag 3 slot 9', slot: '9' },
      { id: 'GEN-25/A', plant: 'Gentiana <lutea>', treatment: 'GA3 500 ppm 24 h', date: 'sown 2026-01-11', place: 'bag 3 slot 10', slot: '10' },
      { id: 'IRI-25', plant: 'Iris', treatment: 'untreated', date: 'sown 2026-02-01', place: undefined, slot: undefined },
    ]);
  });

  it('are those of the lots and batches that are named, with the packet', () => {
    const ids = (...named: string[]) => labelsOf(journal, { now, ids: named }).map(({ id }) => id);
    expect([ids('GEN-25'), ids('GEN-25/A'), ids('OLD-20'), ids('X')]).toEqual([['GEN-25/B', 'GEN-25/A', 'GEN-25'], ['GEN-25/A'], [], []]);
    expect(labelsOf(journal, { now, ids: ['GEN-25'] }).at(-1)).toMatchObject({ date: 'collected 2025-09-20', place: 'tin 1' });
  });

  it('show text of the journal as the characters written', () => {
    const page = labelsPage(labelsOf(journal, { now }), 'a4-cut');
    expect(page).toContain('Gentiana &#60;lutea&#62;');
    expect(page).not.toContain('<lutea>');
    expect(page).toContain('default-src &#39;none&#39;');
  });
});

describe('the counting sheet', () => {
  it('has the batches in the order in which the editor asks for their counts', () => {
    const journal = journalOf(JOURNAL);
    const { rows } = roundOf(journal, now);
    expect(rows.map(({ id }) => id)).toEqual(countingRound(journal, now).map(({ batch }) => batch.path));
    expect(rows).toMatchObject([
      { id: 'GEN-25/B', container: 'bag 3', slot: '9', before: 2, of: 24 }, { id: 'GEN-25/A', container: 'bag 3', slot: '10', before: 0 },
      { id: 'IRI-25', container: undefined, of: 9 },
    ]);
    const page = roundPage([roundOf(journal, now)]);
    expect(page).toContain('2 of 24');
    expect(page).toContain('place unknown');
    expect(page).not.toContain('GA3');
    expect(roundPage([roundOf(journalOf(''), now, { name: 'shed' })])).toContain('No count is due.');
  });
});

/** The printer: a browser that nobody here wrote. */
const CHROMIUM = process.env.CHROMIUM ?? '/usr/bin/chromium';
if (!existsSync(CHROMIUM) && process.env.CI === 'true') throw new Error('Chromium is not installed; .ci/run does that');

describe.runIf(existsSync(CHROMIUM))('printed to PDF', () => {
  let browser: Browser | undefined;
  afterAll(() => browser?.close());

  async function opened(html: string): Promise<Page> {
    browser ??= await chromium.launch({ executablePath: CHROMIUM, args: ['--no-sandbox', '--disable-gpu'] });
    const page = await browser.newPage();
    await page.setContent(html);
    await page.emulateMedia({ media: 'print' });
    return page;
  }

  /** How many pages, and their size in points. */
  async function printed(page: Page): Promise<{ pages: number; sizes: string[] }> {
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
    const sizes = [...pdf.matchAll(/\/MediaBox ?\[0 0 ([\d.]+) ([\d.]+)\]/g)].map(([, wide, high]) => `${Math.round(Number(wide))} x ${Math.round(Number(high))}`);
    return { pages: [...pdf.matchAll(/\/Type ?\/Page\b/g)].length, sizes: [...new Set(sizes)] };
  }

  const label: Label = {
    id: 'GEN-25/A', plant: 'Gentiana lutea', treatment: 'GA3 500 ppm 24 h', date: 'sown 2026-01-11', place: 'bag 3 slot 1', slot: '1',
  };
  const MM = 96 / 25.4;

  test.each(Object.keys(labelSheets) as LabelSheetName[])('labels on %s stand where the sheet has them', async name => {
    const { columns, rows, width, height, top, left, gap, paper } = labelSheets[name];
    const page = await opened(labelsPage(Array.from({ length: columns * rows }, () => label), name, 2));
    const boxOf = async (n: number) => (await page.locator('.label').nth(n).boundingBox())!;
    // Two are used up: the first label has the third place, and two go onto a second sheet.
    const first = await boxOf(0);
    expect(first.x / MM).toBeCloseTo(left + 2 * (width + gap), 0);
    expect(first.y / MM).toBeCloseTo(top, 0);
    const last = await boxOf(columns * rows - 3);
    expect(last.x / MM).toBeCloseTo(left + (columns - 1) * (width + gap), 0);
    expect(last.y / MM).toBeCloseTo(top + (rows - 1) * height, 0);
    const isFull = '[...document.querySelectorAll(".label")].some(label => label.scrollHeight > label.clientHeight + 1)';
    expect(await page.evaluate(isFull)).toBe(false);
    const size = paper === 'A4' ? '595 x 842' : '612 x 792';
    expect(await printed(page)).toEqual({ pages: 2, sizes: [size] });
    await page.close();
  });

  test('a long counting sheet goes on to further pages', async () => {
    const lots = Array.from({ length: 40 }, (_, n) => `lot X-${n} Iris, 9 seeds\nsow X-${n} 2026-02-01, at shelf ${n % 4} slot ${n}\n`).join('');
    const page = await opened(roundPage([roundOf(journalOf(lots), now)]));
    expect(await page.locator('tbody tr').count()).toBe(44);
    const { pages } = await printed(page);
    expect(pages).toBeGreaterThan(1);
    expect(pages).toBeLessThan(5);
    await page.close();
  });
});
