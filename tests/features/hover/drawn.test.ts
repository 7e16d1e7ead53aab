import { expect, test } from 'vitest';
import { hoverAt } from '../../../server/src/features/hover/hover.ts';
import { themes, type ThemeName } from '../../../server/src/pictures/theme.ts';
import { readFixture } from '../../support/fixture.ts';
import { at, cursorOf, journalOf } from '../journals.ts';

const TRIAL = [
  'lot VER-24 Veratrum nigrum, 60 seeds',
  '    ^^^^^^ lot',
  'split VER-24, A 20 seeds, B 20 seeds',
  'soak VER-24/A 2026-01-10 18:00, GA3 500 ppm, 24 h',
  'sow VER-24/A 2026-01-11',
  'sow VER-24/B 2026-01-11',
  'count VER-24/A 2026-02-10, 18',
  '      ^^^^^^^^ batch',
  'count VER-24/B 2026-02-10, 7',
  'lot IRI-1 Iris alba, 10 seeds',
  '    ^^^^^ nothing',
].join('\n');

function over(label: string, theme?: ThemeName): string {
  const fixture = readFixture(TRIAL);
  const { file, position } = cursorOf(fixture, label);
  return hoverAt(journalOf(fixture), file, position, at('2026-02-12'), theme)!.markdown;
}

/** The SVG within a text of Markdown. */
function drawnIn(markdown: string): string {
  const [, encoded] = /!\[[^\]]*\]\(data:image\/svg\+xml;base64,([A-Za-z0-9+/=]+)\)/.exec(markdown)!;
  return Buffer.from(encoded!, 'base64').toString('utf8');
}

test('a lot shows its picture above the verdict, in the colours of the editor', () => {
  const blocks = over('lot', 'dark').split('\n\n');
  expect(blocks[1]).toMatch(/^!\[Germination of VER-24 Veratrum nigrum over time\]/);
  expect(blocks[2]).toContain('Worth repeating');
  expect(drawnIn(blocks[1]!)).toContain(themes.dark.paper);
  expect(drawnIn(blocks[1]!)).toContain('90 % GA3 500 ppm');
});

test('a batch shows its curve beside that of the untreated seed', () => {
  const svg = drawnIn(over('batch', 'light'));
  expect(svg).toContain('GA3 500 ppm 24 h (A), day 30: 18 of 20 germinated = 90 %, 18 new');
  expect(svg).toContain('no soak (B), day 30: 7 of 20 germinated');
});

test('there is no picture where nothing was counted, and none for an editor that names no colours', () => {
  expect(over('nothing', 'light')).not.toContain('![');
  expect(over('lot')).not.toContain('![');
});

test('a batch in the cold shows its stages with today, and its lot too where it was never split', () => {
  const source =
    'lot VER-24 Veratrum nigrum, 60 seeds\n    ^^^^^^ lot\nsow VER-24 2026-01-11\nchill VER-24 2026-01-12, 4 C, 90 days';
  const fixture = readFixture(source);
  const { file, position } = cursorOf(fixture, 'lot');
  const svg = drawnIn(hoverAt(journalOf(fixture), file, position, at('2026-02-12'), 'light')!.markdown);
  expect(svg).toContain('4 C 90 days: 2026-01-12 to 2026-02-12');
  expect(svg).toContain('4 C 90 days, planned: 2026-02-12 to 2026-04-12');
});

/** The picture over the word that is marked. */
function drawnOver(source: string, now: string): string {
  const fixture = readFixture(source);
  const { file, position } = cursorOf(fixture, 'here');
  return drawnIn(hoverAt(journalOf(fixture), file, position, at(now), 'light')!.markdown);
}

test('a soak shows how much of it is gone, a bottle what is left of it, a regime its stages from today', () => {
  const soak = 'lot V-1 Veratrum nigrum, 60 seeds\nsoak V-1 2026-01-11 08:00, water, 24 h\n^^^^ here';
  expect(drawnOver(soak, '2026-01-11 20:00')).toContain('12 h gone, 12 h to go');
  const stock = 'stock G1 2026-01-01, GA3 20 mg, 20 mL\n      ^^ here\ndilute G2 2026-01-02, from G1 5 mL, to 10 mL';
  expect(drawnOver(stock, '2026-01-11')).toContain('15 mL of 20 mL');
  const regime = 'regime woodland, warm 20 C 30 days, chill 4 C 60 days\n       ^^^^^^^^ here';
  expect(drawnOver(regime, '2026-01-11')).toContain('4 C 60 days, planned: 2026-02-10 to 2026-04-11');
});
