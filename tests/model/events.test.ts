import { describe, expect, it } from 'vitest';
import { isEventKeyword, kindsWhere, meaningOfKeyword } from '../../server/src/model/events.ts';
import { keywords, type Keyword } from '../../server/src/model/keywords.ts';

describe('the table of what events mean', () => {
  const all = Object.keys(keywords) as Keyword[];

  it('has each keyword whose records are about a batch, and no other', () => {
    const about = all.filter(keyword => ['batch', 'any'].includes(keywords[keyword].subject));
    expect(all.filter(isEventKeyword)).toEqual(about);
    expect(all.filter(keyword => meaningOfKeyword(keyword) !== undefined)).toEqual(about);
  });

  it('agrees with the reference', () => {
    expect(kindsWhere(({ closes }) => closes)).toEqual(['cut', 'gone', 'discard']);
    // "What is due": one interval after the last of these; what closes a batch is the last look of all.
    expect(kindsWhere(({ isLook }) => isLook)).toEqual(['sow', 'stage', 'count', 'cut', 'pot', 'leave', 'gone', 'discard']);
    // "The end": these may follow the close.
    expect(kindsWhere(({ isRemark }) => isRemark)).toEqual(['judge', 'note', 'photo', 'due']);
  });

  it('lets nothing that closes a batch leave its stage or its place open', () => {
    expect(kindsWhere(({ closes, stage, place, soak }) => closes && (stage !== 'ends' || place !== 'end' || soak === 'silent'))).toEqual([]);
  });
});
