import { expect, test } from 'vitest';
import { hoverAt } from '../../../server/src/features/hover/hover.ts';
import { readFixture } from '../../support/fixture.ts';
import { at, cursorOf, hover, journalOf } from '../journals.ts';

const BAG = `
  lot VER-24 Veratrum nigrum, 60 seeds
  split VER-24, A 24 seeds, B 24 seeds
  soak VER-24/A 2026-01-10 19:00, GA3 500 ppm, 24 h, at bag 3 slot 2
                                                     ^^^^^^^^^^^^^^^ here
  soak VER-24/B 2026-01-10 19:00, water, 24 h, at bag 3 slot 10
  lot IRI-1 Iris alba, 10 seeds, at tin 1
  sow IRI-1 2026-01-10, at Bag 3 slot 7
`;

test('a place tells what is in its container now, slot by slot, and what is due of it', () => {
  expect(hover(BAG, '2026-01-11 18:00')).toMatchInlineSnapshot(`
    "**bag 3** · 3 things there now

    - slot 2: VER-24/A Veratrum nigrum · lift out of GA3 after 24 h, due today
    - slot 7: IRI-1 Iris alba · count; last looked at on 2026-01-10 (sow), due in 6 days
    - slot 10: VER-24/B Veratrum nigrum · lift out of water after 24 h, due today"
  `);
});

test('a place that was emptied says so', () => {
  expect(hover(`
    lot IRI-1 Iris alba, 10 seeds
    sow IRI-1 2026-01-10, at tray 1
                          ^^^^^^^^^ here
    discard IRI-1 2026-01-12
  `, '2026-01-13')).toBe('Nothing is there now.');
});

test('of a full container so many are told as can be read, and none is drawn', () => {
  const lots = Array.from({ length: 14 }, (_, n) => `lot I-${n + 1} Iris, 9 seeds, at tin 1 slot ${n + 1}`);
  const fixture = readFixture([lots[0]!, '                       ^^^^^^^^^^^^^^^ here', ...lots.slice(1)].join('\n'));
  const { file, position } = cursorOf(fixture, 'here');
  const { markdown } = hoverAt(journalOf(fixture), file, position, at('2026-01-13'), 'light')!;
  expect(markdown.split('\n')).toHaveLength(15);
  expect(markdown).toMatch(/^\*\*tin 1\*\* · 14 things there now\n\n- slot 1: I-1 Iris\n/);
  expect(markdown).toMatch(/- slot 12: I-12 Iris\n- and 2 more$/);
});

test('a container that fits is drawn for an editor that shows pictures', () => {
  const fixture = readFixture(BAG);
  const { file, position } = cursorOf(fixture, 'here');
  const { markdown } = hoverAt(journalOf(fixture), file, position, at('2026-01-11 18:00'), 'dark')!;
  expect(markdown.split('\n\n')[1]).toMatch(/^!\[What lies where\]\(data:image\/svg\+xml;base64,/);
});
