import { describe, expect, it } from 'vitest';
import { builtInAgents } from '../../server/src/solutions/agents.ts';
import { agentsWith } from '../../server/src/solutions/declared-agents.ts';
import { toNumber } from '../../server/src/solutions/display.ts';
import { convertStrength, strengthInPpm } from '../../server/src/solutions/strength.ts';
import { agent, valueOf } from './helpers.ts';

describe('an agent that a journal declares', () => {
  it('is converted by the molar mass declared, and that is said', () => {
    const strigol = agentsWith([{ word: 'strigol', molarMass: 346.4, text: 'for parasites' }]).get('strigol')!;
    expect(strigol).toMatchObject({ role: 'declared', name: 'strigol', remark: 'for parasites' });
    const converted = valueOf(convertStrength({ value: 2, unit: 'mM' }, 'mg/L', strigol));
    expect(converted.shown.text).toBe('692.8 mg/L');
    expect(converted.assumptions.map(({ text }) => text)).toEqual(['Molar mass 346.4 g/mol, as declared in the journal.']);
  });

  it('has no molar mass of its own accord', () => {
    const tea = agentsWith([{ word: 'tea' }]).get('tea')!;
    expect(valueOf(strengthInPpm({ value: 1, unit: '%' }, tea)).equals(10_000)).toBe(true);
    expect(strengthInPpm({ value: 1, unit: 'mM' }, tea).ok).toBe(false);
  });

  it('changes of a built-in agent only what it states', () => {
    const agents = agentsWith([{ word: 'GA3', solubility: { value: 3, unit: 'g/L' } }]);
    const changed = agents.get('GA3')!;
    expect(changed.solubility?.source.kind).toBe('journal');
    expect(changed.solubility && toNumber(changed.solubility.ppm)).toBe(3000);
    expect(changed.molarMass?.equals(agent('GA3').molarMass!)).toBe(true);
    expect(changed.role).toBe('hormone');
    expect(agents.get('KNO3')).toBe(agent('KNO3'));
  });

  it('may give its solubility by its own molar mass', () => {
    const agents = agentsWith([{ word: 'x', molarMass: 200, solubility: { value: 10, unit: 'mM' } }]);
    expect(agents.get('x')?.solubility?.ppm.equals(2000)).toBe(true);
  });

  it('of two the later one counts, and figures that cannot be are left out', () => {
    const agents = agentsWith([
      { word: 'x', molarMass: 100 },
      { word: 'x', molarMass: -1, solubility: { value: 0, unit: 'g/L' } },
      { word: 'y', molarMass: 0 },
    ]);
    expect(agents.get('x')).toMatchObject({ molarMass: undefined, solubility: undefined });
    expect(agents.get('y')).toMatchObject({ molarMass: undefined });
  });

  it('leaves the built-in ones alone when there is none', () => {
    expect(agentsWith([])).toBe(builtInAgents);
  });
});
