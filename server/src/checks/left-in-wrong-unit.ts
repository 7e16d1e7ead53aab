import { tellsWhatIsLeft } from '../journal/solutions.ts';
import { isoOf } from '../model/day.ts';
import { printQuantity } from '../model/quantity.ts';
import { factOf } from '../model/record.ts';
import { replacement } from '../syntax/reader.ts';
import { found, type SolutionCheck } from './check.ts';

/** What is left of powder in mL, or of a liquid in mg. */
export const leftInWrongUnit: SolutionCheck = function* ({ id, form }, { journal }) {
  const isPowder = form === 'powder';
  for (const { line, record, moment } of journal.mentionsOf(id)) {
    const wrong = tellsWhatIsLeft(record, id) ? factOf(record, isPowder ? 'volume' : 'mass') : undefined;
    if (!wrong) continue;
    const date = moment ? ` ${isoOf(moment.day)}` : '';
    yield found(line, 'left-in-wrong-unit', wrong, {
      stock: id, written: printQuantity(wrong.value),
      what: isPowder ? 'a packet of powder' : 'a liquid',
      how: isPowder ? `what you weighed, such as “left ${id}${date}, 640 mg”` : `its volume, such as “left ${id}${date}, 12 mL”`,
    }, { fixes: [replacement(wrong, printQuantity({ value: wrong.value.value, unit: isPowder ? 'mg' : 'mL' }))] });
  }
};
