import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { syntaxes } from './tokens.ts';

interface Configuration {
  comments: { lineComment: string; blockComment?: unknown };
  autoClosingPairs: { open: string; close: string; notIn: string[] }[];
  wordPattern: { pattern: string; flags: string };
  folding: { offSide: boolean; markers: { start: string; end: string } };
  onEnterRules: { beforeText: string; action: { indent: string; removeText?: number } }[];
}

const configuration = JSON.parse(readFileSync(new URL('language-configuration.json', syntaxes), 'utf8')) as Configuration;

function words(text: string): string[] {
  const { pattern, flags } = configuration.wordPattern;
  return text.match(new RegExp(pattern, `${flags}g`)) ?? [];
}

/** What the first rule that fits does when Enter is pressed behind a text. */
function onEnter(before: string) {
  return configuration.onEnterRules.find(rule => new RegExp(rule.beforeText).test(before))?.action;
}

describe('words', () => {
  test('ids, batches, agents, dates, times, numbers and units are one word each', () => {
    const line = 'soak VER-24/A/1 2026-01-10 19:30, GA4+7 0.5 g/L, G25-500 10 mL, 250 µL, PY+PD';
    expect(words(line)).toEqual([
      'soak', 'VER-24/A/1', '2026-01-10', '19:30', 'GA4+7', '0.5', 'g/L', 'G25-500', '10', 'mL', '250', 'µL', 'PY+PD',
    ]);
  });

  test('an id that is being typed is one word up to the cursor', () => {
    expect(words('count VER-')).toEqual(['count', 'VER-']);
    expect(words('count VER-24/')).toEqual(['count', 'VER-24/']);
  });

  test('the total sign and the marks of a sentence belong to no word', () => {
    expect(words('count Ähre-2, =9 emerged. "Fine", they say: 种子!')).toEqual([
      'count', 'Ähre-2', '9', 'emerged', 'Fine', 'they', 'say', '种子',
    ]);
  });

  test('no word is empty', () => {
    expect(words('  , = " # %').every(word => word.length > 0)).toBe(true);
    expect(new RegExp(configuration.wordPattern.pattern, configuration.wordPattern.flags).test('')).toBe(false);
  });
});

describe('typing', () => {
  test('comments are lines, and an apostrophe in a remark is not doubled', () => {
    expect(configuration.comments).toEqual({ lineComment: '#' });
    expect(configuration.autoClosingPairs.map(pair => pair.open)).toEqual(['"']);
    expect(configuration.autoClosingPairs.every(pair => pair.notIn.includes('comment') && pair.notIn.includes('string'))).toBe(true);
  });

  // A record that is written below a remark must not become one: nobody would see that it does not count.
  test('Enter ends a remark, and goes on with neither an indentation nor a comment', () => {
    expect(onEnter('  Radicles white.')).toEqual({ indent: 'none', removeText: 2 });
    for (const indent of [' ', '\t', '  ', ' \t', '   ', '    ']) {
      expect(onEnter(`${indent}Radicles white.`)).toEqual({ indent: 'none', removeText: indent.length });
    }
    expect(onEnter('  ')).toEqual({ indent: 'outdent' });
    expect(onEnter('# October')).toEqual({ indent: 'none' });
    expect(onEnter('count VER-24/A, 3')).toBeUndefined();
  });

  test('remarks fold below their record, and so does what lies between region comments', () => {
    expect(configuration.folding.offSide).toBe(true);
    const { start, end } = configuration.folding.markers;
    expect(new RegExp(start).test('# region frames')).toBe(true);
    expect(new RegExp(end).test('#endregion')).toBe(true);
    expect(new RegExp(start).test('# Regions of the garden')).toBe(false);
  });
});
