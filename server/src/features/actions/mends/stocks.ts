/** Solutions that cannot be made, or that are used up. */
import { ledger } from '../../../journal/draws.ts';
import { factOf, factsOf } from '../../../model/record.ts';
import { volumeInMl } from '../../../solutions/amounts.ts';
import { numberText } from '../../../solutions/display.ts';
import { replace, type Mender } from './mend.ts';

/** More is taken than it is made up to: the two volumes may have changed places. */
export const impossibleDilution: Mender = ({ entry: { line, record }, problem }) => {
  const [draw, to] = [factOf(record, 'draw'), factOf(record, 'to')];
  if (!draw?.volume || to?.start !== problem.start) return [];
  if (!volumeInMl(draw.volume.value).gt(volumeInMl(to.value))) return [];
  const taken = line.text.slice(draw.volume.start, draw.volume.end);
  const made = line.text.slice(to.start, to.end).replace(/^\S+\s+/, '');
  return [{
    title: `Swap the volumes: ${made} of ${draw.stock.text}, made up to ${taken}`,
    edits: [replace(line, draw.volume, made), replace(line, to, `to ${taken}`)],
  }];
};

/** All that is left is taken, where that is an amount that can be written. */
export const stockOverdrawn: Mender = ({ entry: { line, record }, problem }, { journal }) => {
  const names = [factOf(record, 'draw')?.stock, ...factsOf(record, 'substance').map(({ name }) => name)];
  const mends = names.flatMap(name => {
    const solution = name && journal.solution(name.text);
    const { overdrawn } = solution ? ledger(solution, journal.accountOf(solution.id)) : {};
    const asked = overdrawn?.key.entry.line === line ? overdrawn.taken?.most : undefined;
    const left = asked && numberText(asked.sub(overdrawn!.missing));
    return left?.exact && left.text !== '0' ? [`${left.text} ${solution?.form === 'powder' ? 'mg' : 'mL'}`] : [];
  });
  const isVolume = /^[\d.]/.test(line.text.slice(problem.start));
  return isVolume && mends.length === 1
    ? [{ title: `Take ${mends[0]!}: all that is left`, edits: [replace(line, problem, mends[0]!)] }] : [];
};
