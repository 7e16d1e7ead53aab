/** Names that look like others and are not the same, because a keyboard or a program wrote other signs. */
import { foreignIn, hasUnseen, usualSpelling } from '../model/spelling.ts';
import { shown } from '../syntax/reader.ts';
import { found, type Found } from './check.ts';
import type { Name, NameIndex, NameUse } from './name-index.ts';
import { onceAFile, usedBy, type Use } from './once-a-file.ts';

/** All of a journal, each where a file first has it: names that look like another one, and names in two alphabets. */
export function lookAlikes(names: NameIndex): Found[] {
  return [...names.alike()].flatMap(uses => onceAFile(uses.sort(byLine)).map(use => told(use, names)));
}

function byLine([{ line: a }]: NameUse, [{ line: b }]: NameUse): number {
  return a.number - b.number;
}

function told({ entry: { line }, named: { written, usual: key }, more }: Use<Name>, names: NameIndex): Found {
  const { text, start, end } = written;
  const usual = usualSpelling(text);
  const foreign = foreignIn(text);
  const why = foreign ? `its “${foreign.letter}” is a ${foreign.alphabet} letter`
    : hasUnseen(text) ? 'it has an invisible character in it'
      : 'its accents are characters of their own';
  const how = names.hasUsual(key) ? `looks like “${shown(usual)}” but is another name, because ${why}`
    : `mixes two alphabets: ${why}`;
  const title = foreign ? 'Write it in Latin letters' : 'Write it with the usual characters';
  return found(line, 'look-alike', { start, end }, { name: shown(text), how, more: usedBy(more) }, {
    fixes: [{ title, start, end, text: usual }],
  });
}
