import { describe, expect, it } from 'vitest';
import { wordFor } from '../../server/src/solutions/agent-names.ts';
import { builtInAgents } from '../../server/src/solutions/agents.ts';
import { agentsWith } from '../../server/src/solutions/declared-agents.ts';

describe('the word for an agent', () => {
  it.each([
    ['ga3', 'GA3'], ['gibberellic acid', 'GA3'], ['C19H22O6', 'GA3'], ['KGA3', 'GA3K'], ['H2O2', 'peroxide'], ['NaOCl', 'bleach'],
    ['potassium nitrate', 'KNO3'], ['6-BAP', 'BA'], ['GA4/7', 'GA4+7'],
  ])('for %s is %s', (name, word) => {
    expect(wordFor(name, builtInAgents)).toBe(word);
  });

  it('is not known for what no agent is called', () => {
    expect(wordFor('G1', builtInAgents)).toBeUndefined();
    expect(wordFor('', builtInAgents)).toBeUndefined();
  });

  it('is found among those that a journal declares', () => {
    expect(wordFor('KELP', agentsWith([{ word: 'kelp' }]))).toBe('kelp');
  });
});
