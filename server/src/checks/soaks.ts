/** The soaks of a lot, each with the batches that lay in it for the same time. */
import type { JournalLine } from '../journal/journal-file.ts';
import { isGivenOut } from '../journal/given-out.ts';
import type { Batch, Lot, Soak } from '../journal/life.ts';

export interface SharedSoak {
  readonly soak: Soak;
  readonly batches: readonly Batch[];
}

/** A batch that was split off in the middle of a soak has an end of its own; what ended before is shared. */
export function soaksOf({ batches }: Lot): SharedSoak[] {
  const byLine = new Map<JournalLine, { soak: Soak; batches: Batch[] }[]>();
  for (const batch of batches.values()) {
    // Its seeds lay there under the names of the batches that they are in now.
    if (isGivenOut(batch)) continue;
    for (const soak of batch.soaks) {
      const { line } = soak.entry;
      const others = byLine.get(line);
      const same = others?.find(other => isSame(other.soak, soak));
      if (same) same.batches.push(batch);
      else if (others) others.push({ soak, batches: [batch] });
      else byLine.set(line, [{ soak, batches: [batch] }]);
    }
  }
  return [...byLine.values()].flat();
}

function isSame(a: Soak, b: Soak): boolean {
  return a === b || (
    a.endedBy === b.endedBy && a.end?.day === b.end?.day && a.end?.minutes === b.end?.minutes
    && a.endEntry?.record.keyword === b.endEntry?.record.keyword
  );
}
