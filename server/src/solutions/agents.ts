/**
 * The agents that need no declaration. Solubilities of GA3 and its potassium salt: a supplier's product
 * data page, unverified; the others from memory. Usual ranges: common practice, no source, drawn wide so
 * that only a slip falls outside. GA3 limit: common practice, no source.
 */
import type { Agent, DoseLimit, FigureSource, Solubility, UsualRange } from './agent.ts';
import { exact } from './amounts.ts';
import { molarMass } from './molar-mass.ts';

const supplier: FigureSource = { kind: 'read', text: 'a supplier’s product data page, unverified' };
const memory: FigureSource = { kind: 'from memory', text: 'from memory, not verified' };
const practice: FigureSource = { kind: 'common practice', text: 'common practice, no source' };

function dissolves(gPerL: number, source: FigureSource): Solubility {
  return { ppm: exact(gPerL).mul(1000), source };
}

function between(low: number, high: number): UsualRange {
  return { low: exact(low), high: exact(high) };
}

const gibberellinLimit: DoseLimit = { of: 'GA3', strength: { value: 1000, unit: 'ppm' }, source: practice };

/** What holds where nothing else is known: a powder of one substance, by weight, in water. */
export const plain = {
  formula: undefined,
  molarMass: undefined,
  molarMassIs: 'computed',
  form: 'powder',
  strengthIs: 'by weight',
  dissolvesIn: 'water',
  solubility: undefined,
  limit: undefined,
  usual: undefined,
  acid: undefined,
  givesOffGas: false,
  keeping: undefined,
  remark: undefined,
  cautions: [],
} as const;

function substance(formula: string) {
  return { ...plain, formula, molarMass: molarMass(formula) };
}

const table: readonly Agent[] = [
  {
    ...substance('C19H22O6'),
    word: 'GA3',
    name: 'gibberellic acid',
    role: 'hormone',
    dissolvesIn: 'alcohol',
    solubility: dissolves(5, supplier),
    limit: gibberellinLimit,
    usual: between(5, 5000),
    keeping: 'In water at 20 C, about half of it is gone after 14 days (a supplier’s product data page, unverified).',
  },
  {
    ...substance('C19H21KO6'),
    word: 'GA3K',
    name: 'potassium gibberellate',
    role: 'hormone',
    solubility: dissolves(50, supplier),
    limit: gibberellinLimit,
    usual: between(5, 5000),
    acid: { word: 'GA3', perSalt: molarMass('C19H22O6').div(molarMass('C19H21KO6')) },
  },
  {
    ...plain,
    word: 'GA4+7',
    name: 'gibberellins A4 and A7',
    molarMass: molarMass('C19H24O5').add(molarMass('C19H22O5')).div(2),
    molarMassIs: 'mean of a mixture',
    role: 'hormone',
    dissolvesIn: 'alcohol',
    usual: between(1, 5000),
  },
  {
    ...substance('KNO3'),
    word: 'KNO3',
    name: 'potassium nitrate',
    role: 'promoter',
    // 32 g in 100 g of water at 20 C, density of that solution 1.16 g/mL.
    solubility: dissolves(280, memory),
    usual: between(100, 50_000),
    cautions: ['oxidiser'],
  },
  {
    ...substance('C2H6ClO3P'),
    word: 'ethephon',
    name: 'ethephon',
    role: 'hormone',
    form: 'liquid',
    usual: between(1, 5000),
    keeping: 'Once diluted, it slowly gives off ethylene: make it fresh (common practice, no source).',
    cautions: ['acid'],
  },
  {
    ...plain,
    word: 'smoke',
    name: 'smoke water',
    role: 'promoter',
    form: 'liquid',
    strengthIs: 'by volume',
    usual: between(100, 1_000_000),
  },
  {
    ...substance('H2O2'),
    word: 'peroxide',
    name: 'hydrogen peroxide',
    role: 'disinfectant',
    form: 'liquid',
    usual: between(300, 100_000),
    givesOffGas: true,
    keeping: 'It gives off oxygen, which can burst a tightly closed bottle (common practice, no source).',
    cautions: ['peroxide'],
  },
  {
    ...substance('NaOCl'),
    word: 'bleach',
    name: 'sodium hypochlorite',
    role: 'disinfectant',
    form: 'liquid',
    usual: between(100, 60_000),
    keeping: 'It loses strength: make it fresh (common practice, no source).',
    cautions: ['bleach'],
  },
  {
    ...substance('CH4N2S'),
    word: 'thiourea',
    name: 'thiourea',
    role: 'promoter',
    solubility: dissolves(140, memory),
    usual: between(100, 50_000),
    cautions: ['poison'],
  },
  {
    ...substance('C10H9N5O'),
    word: 'kinetin',
    name: 'kinetin',
    role: 'hormone',
    dissolvesIn: 'lye',
    usual: between(0.1, 1000),
  },
  {
    ...substance('C12H11N5'),
    word: 'BA',
    name: '6-benzyladenine',
    role: 'hormone',
    dissolvesIn: 'lye',
    solubility: dissolves(0.06, memory),
    usual: between(0.1, 1000),
  },
  { ...plain, word: 'water', name: 'water', role: 'water', form: 'liquid', strengthIs: 'by volume' },
];

export const builtInAgents: ReadonlyMap<string, Agent> = new Map(table.map(agent => [agent.word, agent]));

/** The built-in salt of an acid: GA3K of GA3. */
export function saltOf(acid: Agent): Agent | undefined {
  return table.find(agent => agent.acid?.word === acid.word);
}
