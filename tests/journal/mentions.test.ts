import { describe, expect, test } from 'vitest';
import { mentionsOf, rootOf, subjectIdOf } from '../../server/src/journal/mentions.ts';
import { parse } from '../../server/src/syntax/parse.ts';

const mentions = (line: string) => mentionsOf(parse(line).record!).map(({ id, role, written }) => `${role} ${id} (${written.text})`);

describe('what a record names', () => {
  test.each([
    ['lot VER-24 Veratrum nigrum, 60 seeds', ['definition VER-24 (VER-24)']],
    ['split VER-24/A, 1 6 seeds', ['subject VER-24 (VER-24/A)']],
    ['soak VER-24/A, G2 10 mL, GA3 500 ppm, kelp 5 ppm', ['subject VER-24 (VER-24/A)', 'reference G2 (G2)', 'reference kelp (kelp)']],
    ['sow VER-24, regime cold', ['subject VER-24 (VER-24)', 'reference cold (cold)']],
    ['stock G1, kelp 20 mg, 10 mL', ['definition G1 (G1)', 'reference kelp (kelp)']],
    ['dilute G2, from G1 1 mL, to 2 mL', ['definition G2 (G2)', 'reference G1 (G1)']],
    ['agent kelp, seaweed', ['definition kelp (kelp)']],
    ['regime cold, chill 4 C', ['definition cold (cold)']],
    ['guide Veratrum nigrum, kelp 5 ppm', ['reference kelp (kelp)']],
    ['note G1, clear', ['subject G1 (G1)']],
    ['limit GA3, 500 ppm, for Primula', []],
    ['zone Europe/Vienna', []],
    ['day 2026-01-10', []],
  ])('%s', (line, named) => {
    expect(mentions(line)).toEqual(named);
  });

  test('is first of all its subject', () => {
    expect(subjectIdOf(parse('count VER-24/A, 3').record!)).toBe('VER-24');
    expect(subjectIdOf(parse('guide Veratrum, kelp 5 ppm').record!)).toBe(undefined);
    expect(subjectIdOf(parse('count').record!)).toBe(undefined);
  });

  test('is of a batch the lot', () => {
    expect([rootOf('VER-24'), rootOf('VER-24/A/1')]).toEqual(['VER-24', 'VER-24']);
  });
});
