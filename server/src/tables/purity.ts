/** The columns of how pure powder is. */
import { purityForms } from '../model/record.ts';
import type { Purity } from '../solutions/purity.ts';
import { number, word, type Column } from './table.ts';

export function purityColumns<Of>(purityOf: (of: Of) => Purity | undefined, ofWhat: string): Column<Of>[] {
  return [
    number('purity_percent', `The purity, in percent, of ${ofWhat}.`, of => purityOf(of)?.percent),
    word('purity_of', 'What that is a percentage of, if the record says so; otherwise of the agent as named.', purityForms, of => (
      purityOf(of)?.form)),
  ];
}
