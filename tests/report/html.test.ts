import { defaultTreeAdapter, parse, type DefaultTreeAdapterMap } from 'parse5';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { reportPage } from '../../server/src/report/html.ts';
import { text } from '../support/arbitrary-edits.ts';
import { at, reportFor } from './helpers.ts';

interface Read {
  readonly elements: readonly {
    readonly name: string;
    readonly attributes: Readonly<Record<string, string>>;
    readonly text: string;
  }[];
  readonly faults: readonly string[];
}

function read(html: string): Read {
  const faults: string[] = [];
  const elements: { name: string; attributes: Record<string, string>; text: string }[] = [];
  const visit = (node: DefaultTreeAdapterMap['node']): string => {
    if (defaultTreeAdapter.isTextNode(node)) return node.value;
    const inner = 'childNodes' in node ? node.childNodes.map(visit).join('') : '';
    if (defaultTreeAdapter.isElementNode(node)) {
      const attributes = Object.fromEntries(node.attrs.map(({ name, value }) => [name, value]));
      elements.push({ name: node.tagName, attributes, text: inner });
    }
    return inner;
  };
  visit(parse(html, { onParseError: ({ code }) => faults.push(code) }));
  return { elements, faults };
}

const TRIAL = [
  'lot GEN-25 Gentiana <lutea>, 48 seeds',
  'split GEN-25, A 20 seeds, B 20 seeds',
  'soak GEN-25/A 2026-01-05 18:00, GA3 500 ppm, 24 h',
  'sow GEN-25/A 2026-01-06 18:00',
  'sow GEN-25/B 2026-01-06 18:00',
  'count GEN-25/A 2026-02-10, 18',
  'count GEN-25/B 2026-02-10, 7',
  'lot IRI-1 Iris alba, 10 seeds',
].join('\n');
const now = at('2026-02-12');

describe('the report as a page', () => {
  test('leads from its contents to each lot, with what was judged', () => {
    const { elements } = read(reportPage([reportFor(TRIAL, now)]));
    const entries = elements.filter(({ name }) => name === 'li').map(item => item.text);
    expect(entries).toEqual(expect.arrayContaining(['GEN-25 Gentiana <lutea> (worth repeating)', 'IRI-1 Iris alba']));
    const targets = elements.filter(({ name }) => name === 'a').map(({ attributes }) => attributes.href!.slice(1));
    expect(targets).toHaveLength(2);
    for (const id of targets)
      expect(elements.filter(({ attributes }) => attributes.id === id).map(({ name }) => name)).toEqual(['section']);
  });

  test('shows of a lot the picture, then the verdict, then the table, and its numbers once more', () => {
    const page = reportPage([reportFor(TRIAL, now)]);
    const order = ['<svg', '<h3>Treated against untreated</h3>', '>Treatment</th>', 'The numbers of the picture'].map(
      part => page.indexOf(part),
    );
    expect(order).toEqual(order.toSorted((a, b) => a - b));
    expect(order[0]).toBeGreaterThan(0);
  });

  test('draws all winters of a plant in one frame, with the numbers as a table', () => {
    const { elements } = read(reportPage([reportFor(TRIAL, now, { by: 'species' })]));
    expect(elements.filter(({ name }) => name === 'title').map(title => title.text)).toContain('Gentiana <lutea>, winter by winter');
    expect(elements.filter(({ name }) => name === 'th').map(cell => cell.text)).toContain('2025/26 GA3 500 ppm 24 h');
  });

  test('runs nothing and loads nothing', () => {
    const { elements } = read(reportPage([reportFor(TRIAL, now)]));
    expect(elements.find(({ attributes }) => attributes['http-equiv'] !== undefined)!.attributes.content).toMatch(
      /^default-src 'none'; /,
    );
    expect(elements.filter(({ name }) => ['script', 'link', 'img', 'iframe', 'object'].includes(name))).toEqual([]);
    for (const { attributes } of elements) {
      expect(Object.keys(attributes).filter(name => name.startsWith('on'))).toEqual([]);
    }
  });

  test('is sound HTML whatever stands in the journal, with each id once', () => {
    fc.assert(
      fc.property(text, journal => {
        const { faults, elements } = read(
          reportPage([reportFor(journal, now), reportFor(journal, now, { by: 'species' })]),
        );
        expect(faults).toEqual([]);
        const ids = elements.flatMap(({ attributes }) => attributes.id ?? []);
        expect(ids).toEqual([...new Set(ids)]);
        expect(elements.map(each => each.text).join('')).not.toMatch(/\b(NaN|undefined|Infinity)\b/);
      }),
      { numRuns: 40 },
    );
  });
});
