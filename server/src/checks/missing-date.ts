import { found, type LotCheck, type SolutionCheck } from './check.ts';

/** Records of a lot that carry no date and stand below no `day`. A date that is there but wrong is another problem. */
export const missingDate: LotCheck = function* ({ undated }) {
  for (const { line, record } of undated) {
    if (!record.broken) yield found(line, 'missing-date', record.keywordSpan);
  }
};

export const missingStockDate: SolutionCheck = function* ({ entry: { line, record, moment } }) {
  if (!moment && !record.broken) yield found(line, 'missing-date', record.keywordSpan);
};
