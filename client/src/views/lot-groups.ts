/** The list of lots in groups, by plant or by winter. */
import type { LotShown } from '../../../server/src/lsp/lots.ts';
import { counted } from './brief.ts';

export type Grouping = 'plant' | 'winter';

export interface LotGroup {
  /** Unique in the list. */
  readonly key: string;
  readonly title: string;
  /** Example: '3 lots, 1 open' */
  readonly note: string;
  /** Whether it is unfolded at first: what is over does not hide what is open. */
  readonly isExpanded: boolean;
  readonly lots: readonly LotShown[];
}

const byState: readonly LotShown['state'][] = ['open', 'not begun', 'left off', 'closed'];

/** Of the lots that hold each word of a filter: by plant as they come, or the latest winter first. Open lots lead. */
export function lotGroups(all: readonly LotShown[], grouping: Grouping, filter: string): LotGroup[] {
  const lots = inOrder(all.filter(lot => isWanted(lot, filter)));
  const groups = grouping === 'plant'
    ? grouped(lots, ({ plantKey }) => [plantKey]).sort(([a], [b]) => last(a, b) || (a < b ? -1 : 1))
    : grouped(lots, ({ winters }) => (winters.length > 0 ? winters : [''])).sort(([a], [b]) => last(a, b) || (a > b ? -1 : 1));
  return groups.map(([key, own]) => {
    const open = own.filter(({ state }) => state === 'open').length;
    return {
      key: `${grouping} ${key}`,
      title: grouping === 'plant' ? own[0]!.plant ?? 'No plant named' : key === '' ? 'Not begun' : `Winter ${key}`,
      note: [counted(own.length, 'lot'), open > 0 && `${open} open`].filter(Boolean).join(', '),
      isExpanded: open > 0 || filter.trim() !== '',
      lots: own,
    };
  });
}

/** What has no plant or no winter stands last. */
function last(a: string, b: string): number {
  return Number(a === '') - Number(b === '');
}

function inOrder(lots: readonly LotShown[]): LotShown[] {
  return [...lots].sort((a, b) => byState.indexOf(a.state) - byState.indexOf(b.state));
}

function isWanted(lot: LotShown, filter: string): boolean {
  const words = [...wordsOf(lot), ...lot.winters, lot.journal ?? ''].join(' ').toLowerCase();
  return filter.toLowerCase().split(/\s+/).every(word => words.includes(word));
}

/** Behind a lot's id, for little room: the verdict first. The plant is told where the group does not name it. */
export function lotNote({ verdicts = [], plant, shares, stateText, journal }: LotShown, grouping: Grouping): string {
  const named = grouping === 'plant' ? undefined : plant;
  return [verdicts.join(', '), named, shares.join(', '), stateText, journal].filter(Boolean).join(' · ');
}

/** All that is known of a lot, a thing after the other. */
export function wordsOf({ id, plant, state, stateText, shares, verdicts = [] }: LotShown): string[] {
  const stands = stateText.includes(state) ? stateText : `${state}: ${stateText}`;
  return [[id, plant].filter(Boolean).join(' '), stands, ...shares, ...verdicts];
}

/** The items of each key in the order in which they come; one with several keys stands under each. */
function grouped(lots: readonly LotShown[], keys: (lot: LotShown) => readonly string[]): [string, LotShown[]][] {
  const groups = new Map<string, LotShown[]>();
  for (const lot of lots) {
    for (const key of keys(lot)) {
      const group = groups.get(key);
      if (group) group.push(lot);
      else groups.set(key, [lot]);
    }
  }
  return [...groups];
}
