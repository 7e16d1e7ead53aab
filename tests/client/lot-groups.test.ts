import { expect, test } from 'vitest';
import { lotGroups, lotNote, wordsOf, type LotGroup } from '../../client/src/views/lot-groups.ts';
import type { LotShown } from '../../server/src/lsp/lots.ts';

const at = { uri: 'file:///a.germ', range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } } };

function lot(id: string, plant: string | undefined, more: Partial<LotShown> = {}): LotShown {
  return {
    id, plant, plantKey: plant?.toLowerCase() ?? '', folder: 'file:///', journal: undefined, state: 'open', stateText: 'sown, day 3',
    shares: [], verdicts: [], winters: ['2025/26'], at, ...more,
  };
}

/** Each row as it stands there when everything is unfolded; `+` where it is folded at first. */
function rows(groups: readonly LotGroup[]): string[] {
  return groups.flatMap(({ title, note, isExpanded, lots }) => [
    `${isExpanded ? '' : '+ '}${title} (${note})`, ...lots.map(({ id }) => `  ${id}`),
  ]);
}

test('by plant, however it is spelt, open lots lead, and a plant without an open one is folded', () => {
  const lots = [
    lot('A-1', 'Adonis vernalis', { state: 'closed' }), lot('G-1', 'Gentiana lutea', { state: 'closed' }), lot('G-2', 'gentiana lutea'),
    lot('G-3', 'Gentiana lutea', { state: 'left off' }), lot('G-4', 'Gentiana lutea', { state: 'not begun' }), lot('X', undefined),
  ];
  expect(rows(lotGroups(lots, 'plant', ''))).toEqual([
    '+ Adonis vernalis (1 lot)', '  A-1', 'gentiana lutea (4 lots, 1 open)', '  G-2', '  G-4', '  G-3', '  G-1',
    'No plant named (1 lot, 1 open)', '  X',
  ]);
});

test('by winter the latest stands first, a lot of two winters in both, and what was not begun last', () => {
  const lots = [
    lot('A-1', 'Adonis', { winters: ['2023/24'], state: 'closed' }), lot('G-1', 'Gentiana', { winters: ['2025/26', '2023/24'] }),
    lot('I-1', 'Iris', { state: 'not begun', winters: [] }), lot('P-1', 'Paeonia', { winters: ['2022/23'], state: 'closed' }),
  ];
  expect(rows(lotGroups(lots, 'winter', ''))).toEqual([
    'Winter 2025/26 (1 lot, 1 open)', '  G-1', 'Winter 2023/24 (2 lots, 1 open)', '  G-1', '  A-1',
    '+ Winter 2022/23 (1 lot)', '  P-1', '+ Not begun (1 lot)', '  I-1',
  ]);
});

test('a filter finds the lots that have all of its words anywhere, and unfolds them', () => {
  const lots = [
    lot('G-1', 'Gentiana lutea', { state: 'closed', stateText: 'all closed', verdicts: ['harmful'] }), lot('G-2', 'Gentiana lutea'),
    lot('P-1', 'Paeonia', { journal: 'elsewhere', winters: ['2019/20'] }),
  ];
  const found = (filter: string) => lotGroups(lots, 'plant', filter).flatMap(group => group.lots.map(({ id }) => id));
  expect(rows(lotGroups(lots, 'plant', 'harm LUT'))).toEqual(['Gentiana lutea (1 lot)', '  G-1']);
  expect(found('closed')).toEqual(['G-1']);
  expect(found('open gent')).toEqual(['G-2']);
  expect(found('2019')).toEqual(['P-1']);
  expect(found('ELSEWHERE')).toEqual(['P-1']);
  expect(found('peony')).toEqual([]);
});

test('behind a lot the verdict stands first; in full words the state is named, which else only the symbol shows', () => {
  const treated = lot('G-1', 'Gentiana', { shares: ['untreated: 2 of 24 = 8.3 %', 'GA3 500 ppm 24 h: 20 of 24 = 83.3 %'], verdicts: ['worth repeating so far'] });
  expect(lotNote(treated, 'plant')).toBe('worth repeating so far · untreated: 2 of 24 = 8.3 %, GA3 500 ppm 24 h: 20 of 24 = 83.3 % · sown, day 3');
  expect(lotNote({ ...treated, shares: [] }, 'winter')).toBe('worth repeating so far · Gentiana · sown, day 3');
  expect(lotNote({ ...lot('I-1', 'Iris', { journal: 'x' }), verdicts: undefined }, 'plant')).toBe('sown, day 3 · x');
  expect(wordsOf(treated)).toEqual([
    'G-1 Gentiana', 'open: sown, day 3', 'untreated: 2 of 24 = 8.3 %', 'GA3 500 ppm 24 h: 20 of 24 = 83.3 %', 'worth repeating so far',
  ]);
  expect(wordsOf(lot('X', undefined, { state: 'closed', stateText: 'all closed' }))).toEqual(['X', 'all closed']);
});
