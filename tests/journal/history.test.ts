import { describe, expect, test } from 'vitest';
import { batchOf, counted, lotOf, when } from './helpers.ts';

const types = (source: string, path: string) => {
  const { inherited, events } = batchOf(source, path);
  return [inherited.map(({ type }) => type), events.map(({ type }) => type)];
};

describe('the batches of a lot', () => {
  const source = `
    lot VER-24 Veratrum nigrum, 60 seeds, at tin 1
    split VER-24, A 24 seeds, B 24 seeds
    split VER-24/B, 1 12 seeds, 2 6 seeds
  `;

  test('are all that were split off, each before its own', () => {
    const { batches } = lotOf(source);
    expect([...batches.keys()]).toEqual(['VER-24', 'VER-24/A', 'VER-24/B', 'VER-24/B/1', 'VER-24/B/2']);
    expect([...batches.values()].map(({ seeds, kept }) => [seeds, kept]))
      .toEqual([[60, 12], [24, 24], [24, 6], [12, 12], [6, 6]]);
    expect(batches.get('VER-24/B/1')!.parent).toBe(batches.get('VER-24/B'));
    expect(batches.get('VER-24/B')!.children.map(({ path }) => path)).toEqual(['VER-24/B/1', 'VER-24/B/2']);
  });

  test('may be given out in files and lines of any order', () => {
    const { batches } = lotOf(`
      --- a.germ
      split VER-24/B, 1 12 seeds
      count VER-24/B/1 2026-01-10, 1
      --- b.germ
      split VER-24, B 24 seeds
      --- c.germ
      lot VER-24 Veratrum nigrum, 60 seeds
    `);
    expect(counted(batches.get('VER-24/B/1')!.totals)).toEqual({ germinated: 1 });
  });

  test('may be nested as deep as anybody likes', () => {
    const lines = Array.from({ length: 3000 }, (_, depth) => `split V${'/A'.repeat(depth)}, A 9 seeds`);
    expect(lotOf(`lot V Veratrum, 9 seeds\n${lines.join('\n')}`, 'V').batches.size).toBe(3001);
  });

  test('have an unknown number of seeds where the lot has', () => {
    const { root, batches } = lotOf('lot VER-24 Veratrum nigrum\nsplit VER-24, A 24 seeds\nsow VER-24 2026-01-10');
    expect([root.seeds, root.kept, root.sown, root.tested]).toEqual([undefined, undefined, undefined, undefined]);
    expect(batches.get('VER-24/A')!.seeds).toBe(24);
  });
});

describe('a batch that is split off', () => {
  const source = `
    lot VER-24 Veratrum nigrum, 60 seeds
    split VER-24, A 40 seeds
    day 2026-01-10
    scarify VER-24/A, nicked
    note VER-24/A, hard
    soak VER-24/A 19:00, water, 12 h
    day 2026-01-11
    chill VER-24/A 08:00, 4 C, 60 days, at fridge
    count VER-24/A 09:00, 2
    split VER-24/A 10:00, 1 20 seeds
    day 2026-03-12
    warm VER-24/A, 20 C
    sow VER-24/A/1, in grit, at bench
  `;

  test('takes along what was done to the seed, without the remarks', () => {
    expect(types(source, 'VER-24/A/1')).toEqual([['scarify', 'soak', 'stage', 'count'], ['sow']]);
  });

  test('takes along no counts', () => {
    expect(counted(batchOf(source, 'VER-24/A/1').totals)).toEqual({});
    expect(counted(batchOf(source, 'VER-24/A').totals)).toEqual({ germinated: 2 });
  });

  test('takes along the medium until it has its own', () => {
    const sown = source.replace('split VER-24/A 10:00', 'sow VER-24/A 09:30, in moss\n    split VER-24/A 10:00');
    expect(batchOf(sown.replace(', in grit', ''), 'VER-24/A/1').medium).toBe('moss');
    expect(batchOf(sown, 'VER-24/A/1').medium).toBe('grit');
    expect(batchOf(sown, 'VER-24/A').medium).toBe('moss');
    expect(batchOf(`${sown}\nsow VER-24/A/1 2027-01-01`, 'VER-24/A/1').medium).toBe('grit');
  });

  test('ends its stage for itself', () => {
    const stages = (path: string) => batchOf(source, path).stages
      .map(({ stage, start, end }) => [stage, when(start), when(end)]);
    expect(stages('VER-24/A')).toEqual([['chill', '2026-01-11 08:00', '2026-03-12'], ['warm', '2026-03-12', undefined]]);
    expect(stages('VER-24/A/1')).toEqual([['chill', '2026-01-11 08:00', '2026-03-12']]);
  });

  test('knows nothing of what happened to the parent later', () => {
    expect(types(`${source}    soak VER-24/A 2026-04-01, water, 1 h\n`, 'VER-24/A/1')[0]).not.toContain('lift');
    expect(batchOf(`${source}    soak VER-24/A 2026-04-01, water, 1 h\n`, 'VER-24/A/1').soaks).toHaveLength(1);
  });

  test('was sown when the parent was, and starts its counts at nothing', () => {
    const batch = batchOf(`
      lot VER-24 Veratrum nigrum, 60 seeds
      sow VER-24 2026-01-10
      count VER-24 2026-01-20, 10
      split VER-24 2026-01-21, A 20 seeds, B 30 seeds
      count VER-24/A 2026-01-30, 3
    `, 'VER-24/A');
    expect([when(batch.sowing?.moment), batch.sown, batch.tested, counted(batch.totals)]).toEqual(['2026-01-10', 20, 20, { germinated: 3 }]);
  });
});

describe('a stage', () => {
  const stages = (source: string) => batchOf(`lot VER-24 Veratrum\n${source}`).stages.map(({ stage, end }) => [stage, when(end)]);

  test('lasts until the next one, a sowing, or the end of the batch', () => {
    expect(stages('chill VER-24 2026-01-10, 4 C\nwarm VER-24 2026-03-10, 20 C\ndiscard VER-24 2026-05-10, soft'))
      .toEqual([['chill', '2026-03-10'], ['warm', '2026-05-10']]);
    expect(stages('chill VER-24 2026-01-10, 4 C\nsow VER-24 2026-03-10')).toEqual([['chill', '2026-03-10']]);
    expect(stages('sow VER-24 2026-01-10\nchill VER-24 2026-03-10, 4 C, 90 days\ncount VER-24 2026-07-01, 0')).toEqual([['chill', undefined]]);
  });
});

describe('day 0', () => {
  const origin = (source: string) => {
    const { origin: found } = batchOf(`lot VER-24 Veratrum\n${source}`);
    return found && `${found.by} ${when(found.moment)!}`;
  };

  test('is the first sowing, else the end of the last soak, else the start of the first stage', () => {
    expect(origin('soak VER-24 2026-01-09 19:00, water, 24 h\nchill VER-24 2026-01-08\nsow VER-24 2026-01-12\nsow VER-24 2026-01-11'))
      .toBe('sowing 2026-01-11');
    expect(origin('soak VER-24 2026-01-09 19:00, water, 1 h\nsoak VER-24 2026-01-10 19:00, water, 24 h\nchill VER-24 2026-01-08'))
      .toBe('end of the soak 2026-01-11 19:00');
    expect(origin('chill VER-24 2026-01-08\nwarm VER-24 2026-02-08')).toBe('start of the first stage 2026-01-08');
    expect(origin('move VER-24 2026-01-08, at shelf')).toBe(undefined);
  });

  test('is no soak that goes on, or that ends before it begins', () => {
    expect(origin('soak VER-24 2026-01-09 19:00, water')).toBe(undefined);
    expect(origin('soak VER-24 2026-01-09 19:00, water, until 2026-01-08')).toBe(undefined);
    expect(origin('chill VER-24 2026-01-08\nsoak VER-24 2026-02-09 19:00, water')).toBe('start of the first stage 2026-01-08');
  });
});

describe('a batch that is closed', () => {
  test('is closed by the first cut or discard in time', () => {
    const { closed, cut } = batchOf(`
      lot VER-24 Veratrum nigrum, 9 seeds
      sow VER-24 2026-01-01
      discard VER-24 2026-06-02, the rest
      cut VER-24 2026-06-01, 8 fresh, 1 dead
    `);
    expect([closed?.type, when(closed?.entry.moment)]).toEqual(['cut', '2026-06-01']);
    expect(cut).toMatchObject({ classes: { fresh: 8, hard: 0, dead: 1, empty: 0 }, expected: 9, tested: 9 });
  });
});

describe('a batch without seeds', () => {
  test('changes by no record that is written for it', () => {
    const { root } = lotOf(`
      lot VER-24 Veratrum nigrum, 40 seeds
      split VER-24, A 20 seeds, B 20 seeds
      soak VER-24 2026-01-10, water
      count VER-24 2026-01-12, 3
      discard VER-24 2026-01-13, soft
      note VER-24 2026-01-14, a good year
    `);
    expect(root.events.map(({ type }) => type)).toEqual(['split', 'misplaced', 'misplaced', 'misplaced', 'note']);
    expect([root.soaks, counted(root.totals), root.closed]).toEqual([[], {}, undefined]);
  });
});

describe('a record that cannot be read in full', () => {
  test('marks its batch and those of it as unread', () => {
    const unread = (source: string) => [...lotOf(source).batches.values()]
      .filter(batch => batch.unread).map(({ path }) => path);
    const lot = 'lot VER-24 Veratrum nigrum, 60 seeds\nsplit VER-24, A 20 seeds, B 20 seeds\nsplit VER-24/A 2026-01-01, 1 9 seeds\n';
    expect(unread(`${lot}sow VER-24/A 2026-01-10, 20 seed, 18 K`)).toEqual(['VER-24/A', 'VER-24/A/1']);
    expect(unread(`${lot}sow VER-24/B, 20 seeds`)).toEqual(['VER-24/B']);
    expect(unread(`${lot}sow VER-24/B 2026-01-10, 20 seeds`)).toEqual([]);
  });
});
