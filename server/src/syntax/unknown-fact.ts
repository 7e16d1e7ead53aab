/** What to say of a fact that its record does not take: the first diagnosis that recognises a slip speaks. */
import { offered, type Diagnose, type Diagnosis, type Place } from './diagnosis.ts';
import type { Piece } from './grammar.ts';
import {
  agentless, bareNumber, looseTemperatures, shareCounted, spacedNumber, stageless, unknownUnit, vagueNumber,
} from './number-slips.ts';
import { spanFrom } from './reader.ts';
import { inLiquid, otherBatch, timeInWords } from './substance-slips.ts';
import { foreignForm, misplacedMoment, nearWord, partedText, placeless, wordless, wordOrder } from './word-slips.ts';

/** Those that are surer of what was meant come first. */
const diagnoses: readonly Diagnose[] = [
  otherBatch, timeInWords, inLiquid, misplacedMoment, foreignForm, agentless, shareCounted,
  wordOrder, vagueNumber, spacedNumber, looseTemperatures, stageless, bareNumber,
  wordless, unknownUnit, nearWord, partedText, placeless,
];

export function reportUnknown(place: Place, pieces: readonly Piece[]): void {
  const { reader, takes: { keyword } } = place;
  const whole = spanFrom(pieces, 0);
  let found: Diagnosis | undefined;
  for (const diagnose of diagnoses) if ((found = diagnose(place, pieces, whole))) break;
  const { code = 'unknown-fact', span, suggestion, fixes = [] } = found ?? { span: pieces[0]!, suggestion: offered(place) };
  const written = reader.shown(span);
  reader.report(code, span, { text: written, written, keyword, suggestion, example: suggestion, expected: 'one number' }, fixes);
}
