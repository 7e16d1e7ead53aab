import { describe, expect, test } from 'vitest';
import { keywords } from '../../server/src/model/keywords.ts';
import { spellingsOf } from '../../server/src/model/quantity.ts';
import { countables, cutClasses, dormancies, purityForms } from '../../server/src/model/record.ts';
import { builtInAgents } from '../../server/src/solutions/agents.ts';
import { leadWords } from '../../server/src/syntax/fact-types.ts';
import { namesOf, tokenize } from './tokens.ts';

describe('every keyword', () => {
  test.each(Object.entries(keywords))('%s begins a record whose example has a colour everywhere', (keyword, { example }) => {
    const [line = []] = tokenize([example]);
    expect(line[0]!.text).toBe(keyword);
    expect(namesOf(line[0]!)[0]).toMatch(/^(keyword\.control|storage\.type)\.record\.plumule$/);
    expect(line.filter(token => token.text.trim() && namesOf(token).length === 0)).toEqual([]);
  });

  test.each(Object.keys(keywords))('%s may be written with capitals', keyword => {
    for (const written of [keyword.toUpperCase(), `${keyword.charAt(0).toUpperCase()}${keyword.slice(1)}`]) {
      expect(namesOf(tokenize([`${written} X`])[0]![0]!)[0]).toMatch(/\.record\.plumule$/);
    }
  });
});

describe('every word of the model', () => {
  test('every stage, fate, quality, finding of a cut test, class of dormancy and form of a purity is known', () => {
    const scopes = [...countables, ...cutClasses].map(word => namesOf(tokenize([`count X, 2 ${word}`])[0]!.at(-1)!)[0]);
    expect(scopes.every(scope => scope?.startsWith('constant.language.'))).toBe(true);
    for (const word of dormancies) {
      expect(namesOf(tokenize([`lot X Y, dormancy ${word}`])[0]!.at(-1)!)).toEqual(['constant.language.dormancy.plumule']);
    }
    for (const word of purityForms) {
      expect(namesOf(tokenize([`stock X, purity 75 % ${word}`])[0]!.at(-1)!)).toEqual(['constant.language.purity.plumule']);
    }
  });

  test('every word that a fact begins with is known', () => {
    for (const word of Object.values(leadWords).flat()) {
      const found = tokenize([`sow X, ${word} 1`])[0]!.find(token => token.text === word);
      expect(found && namesOf(found), word).toEqual(['keyword.other.fact.plumule']);
    }
  });

  test('every agent that needs no declaration is one, the longest name first', () => {
    for (const word of builtInAgents.keys()) {
      for (const line of [`soak X, ${word}`, `soak X, ${word} 1 ppm`, `soak X, ${word} unmeasured`]) {
        const found = tokenize([line])[0]!.find(token => token.text === word);
        expect(found && namesOf(found), line).toEqual(['support.type.agent.plumule']);
      }
    }
  });

  test.each(['strength', 'volume', 'mass', 'duration', 'temperature', 'molarMass'] as const)('every unit of %s is one', dimension => {
    for (const unit of spellingsOf(dimension)) {
      for (const spelling of [unit, unit.replace(/^u/, 'µ'), unit.replace(/^u/, 'μ')]) {
        for (const line of [`soak X, GA3 12.5 ${spelling}`, `soak X, GA3 12.5${spelling}, next`]) {
          const units = tokenize([line])[0]!.filter(token => namesOf(token).includes('keyword.other.unit.plumule'));
          expect(units.map(token => token.text), line).toEqual([spelling]);
        }
      }
    }
  });
});
