import { describe, expect, test } from 'vitest';
import { problemKinds } from '../../server/src/model/problems.ts';
import { linesOf, pageAt, stringsOf, textsForUsers } from './texts.ts';

/** Phrases that readers stumbled over. What is right for once gets a wording of its own rather than an exception. */
const BANNED: readonly RegExp[] = [
  /\bnobody\b/i, // an inverted negation: say what is unknown, or what growers do
  /\bwhoever\b/i,
  /\b(is|are|was|were) to (?!\d)/, // have, must, will
  /\b(rings|says|knows|holds|takes|gives|means|comes) not\b/,
  /\bmend(s|ed|ing)?\b/i, // fix
  /\bgraver?\b/i, // serious
  /\b(is|are) (one,? )too\b/,
  /\b(has|have|had) lain\b/,
  /\blay (behind|there|in)\b/,
  /\b(lies|lay) in (it|a soak|the soak|water)\b/, // is in, was soaked in
  /\bbegun today\b/i,
  /\bless of the\b/i, // fewer
  /\bso that only\b/,
  /\bclock hangs\b/,
  /\b(counts? for nothing|held against|stands? behind (it|them))\b/,
  /\brests? on (no source|nobody)/, // common practice, no source
  /\b(is|are) told\b/,
  /\bcannot be told\b(?! (apart|from))/,
  /\b(is|are|was|were) not (written|known)\b/, // recorded, unknown
  /\btaken for granted\b/i, // assumed
  /\breckon/i,
  /\bto be (filled|looked)\b/,
  /(?<!there )\b(is|are) no (?!longer|more|such|other|less)[a-z]+\b/i, // is not a
  /\bin place of\b/, // instead of
  /\bthat is there\b/,
  /\bas on \d/, // as of
];

function slipsIn(text: string): string[] {
  return BANNED.flatMap(phrase => phrase.exec(text)?.[0] ?? []);
}

describe('the page for developers', () => {
  const rows = pageAt('DEVELOPERS.md').split('\n## Plain English\n')[1]!.split('\n## ')[0]!
    .split('\n').filter(line => line.startsWith('| ')).slice(1).map(line => line.split('|').map(cell => cell.trim()));

  test('has ten pairs of what not to write and what to write, and the test knows each', () => {
    expect(rows.length).toBe(10);
    for (const [, not = '', plain = ''] of rows) {
      expect(slipsIn(not), not).not.toEqual([]);
      expect(slipsIn(plain), plain).toEqual([]);
    }
  });
});

describe('the table of problems', () => {
  const sentences = (text: string) => text.split(/(?<=[.?:;]) /);

  test.each(Object.entries(problemKinds))('says of %s in short sentences what is wrong, and what to do', (_, { message, advice }) => {
    expect(message.length).toBeLessThanOrEqual(135);
    expect(advice.length).toBeLessThanOrEqual(150);
    for (const sentence of [...sentences(message), ...sentences(advice)]) {
      expect(sentence.split(' ').length, sentence).toBeLessThanOrEqual(26);
    }
    expect(slipsIn(`${message} ${advice}`)).toEqual([]);
  });
});

describe('whatever a user reads', () => {
  const texts = textsForUsers();

  test('is found: strings, templates, the manifest and pages', () => {
    const at = (place: string) => texts.filter(text => text.place.startsWith(place)).length;
    for (const place of ['server/src/report/', 'client/src/', 'package.json', 'README.md', 'syntaxes/README.md']) {
      expect(at(place), place).toBeGreaterThan(20);
    }
    expect(stringsOf('a.ts', 'f(`the ${a} of b`, \'as is\', x ? \'one too\' : y)').map(({ text }) => text)).toEqual(['the – of b', 'as is', 'one too']);
    expect(linesOf('a.md', 'is\n`is to`\n```\nis to\n```\nto go').map(({ text }) => text)[0]).toBe('is ``');
  });

  test('has none of the phrases that readers stumbled over', () => {
    expect(texts.flatMap(({ place, text }) => slipsIn(text).map(slip => `${place}: “${slip}” in “${text}”`))).toEqual([]);
  });
});
