/** A quantity that stands alone: an option of the command line, an answer to a question. Read as a journal is read. */
import type { Mass, Strength, Volume } from '../model/quantity.ts';
import type { PurityForm } from '../model/record.ts';
import { readers } from './fact-readers.ts';
import { syntaxOf, type Amount, type Piece } from './grammar.ts';
import { readQuantity, readStrength, readVolume } from './quantities.ts';
import { LineReader, shown } from './reader.ts';

interface Quantities {
  readonly strength: Strength;
  readonly volume: Volume;
  readonly mass: Mass;
  readonly purity: { readonly percent: number; readonly form?: PurityForm | undefined };
}

export type QuantityText<What extends keyof Quantities> =
  | { readonly ok: true; readonly value: Quantities[What] }
  | { readonly ok: false; readonly message: string };

type Alone = Exclude<keyof Quantities, 'purity'>;
type Read = (reader: LineReader, amount: Amount) => { readonly value: unknown } | undefined;

const kinds: Readonly<Record<Alone, { readonly read: Read; readonly example: string }>> = {
  strength: { read: readStrength, example: '500 ppm' },
  volume: { read: readVolume, example: '20 mL' },
  mass: { read: (reader, amount) => readQuantity(reader, amount, 'mass'), example: '100 mg' },
};

/**
 * A refusal says what a journal would say of it.
 *
 * Example: quantityOf('strength', '500ppm') is 500 ppm; quantityOf('strength', '0,5 g/L') says how to write the number
 */
export function quantityOf<What extends keyof Quantities>(what: What, text: string): QuantityText<What> {
  const plain = text.replaceAll(/\s+/g, ' ').trim();
  return (what === 'purity' ? purityOf(plain) : amountOf(what, plain)) as QuantityText<What>;
}

function amountOf(what: Alone, text: string): QuantityText<Alone> {
  const { read, example } = kinds[what];
  const { reader, pieces: [amount, ...behind] } = piecesOf(text);
  if (amount?.kind !== 'amount' || behind.length > 0) return refusal(what, text, example);
  const found = read(reader, amount);
  return found ? { ok: true, value: found.value as Quantities[Alone] } : firstProblem(reader);
}

/** The sign may be left out: nothing else can be meant. */
function purityOf(text: string): QuantityText<'purity'> {
  const { reader, pieces } = piecesOf(`purity ${text.replace(/^[\d.]+(?=$| (?:acid|salt)$)/i, '$& %')}`);
  const fact = pieces.length > 0 ? readers.purity(reader, pieces, 'stock') : undefined;
  if (fact?.type === 'purity' && fact.end === pieces.at(-1)!.end) {
    return { ok: true, value: { percent: fact.percent, form: fact.form } };
  }
  return fact || reader.problems.length === 0 ? refusal('purity', text, '90 %') : firstProblem(reader);
}

/** The pieces of a text; none where it holds a comma that stands in no number. */
function piecesOf(text: string): { readonly reader: LineReader; readonly pieces: readonly Piece[] } {
  const reader = new LineReader(`x ${text}`);
  const syntax = syntaxOf(reader.line);
  return { reader, pieces: syntax?.facts.length === 0 ? syntax.head : [] };
}

type Refusal = Extract<QuantityText<Alone>, { ok: false }>;

function firstProblem({ problems }: LineReader): Refusal {
  return { ok: false, message: problems[0]!.message };
}

function refusal(what: string, text: string, example: string): Refusal {
  return { ok: false, message: `“${shown(text)}” is not a ${what} such as “${example}”.` };
}
