import fc from 'fast-check';
import { expect, test } from 'vitest';
import { completionsAt } from '../../server/src/features/completion/completion.ts';
import { workspaceSymbols } from '../../server/src/features/workspace-symbols.ts';
import { Journal } from '../../server/src/journal/journal.ts';
import { dayOf } from '../../server/src/model/day.ts';
import { doTo, step, text } from '../support/arbitrary-edits.ts';

/** Lines at whose end something is offered that is known of the whole journal. */
const probes = [
  '', 'cou', 'count ', 'count L', 'soak L1/A ', 'note ', 'sow L1/A, at ', 'sow L1, at bag 1 slot 1', 'sow L1/A, ', 'sow L1, in ', 'sow L1, regime ',
  'lot X ', 'lot X Iris, ', 'lot X Iris, from ', 'soak L1, ', 'dilute X, from ', 'dilute X, from G1 1 mL, to ', 'stock X, GA3 1 mg, ', 'guide ', 'guide Iris, source ',
];

/** What is offered and found: all of it, wherever a change could show. */
function offeredIn(journal: Journal, day: number): unknown {
  const now = { day, minutes: 600 };
  const file = 'probe.germ';
  const offered = probes.map(probe => {
    journal.set(file, probe);
    return [probe, completionsAt(journal, file, { line: 0, character: probe.length }, now)];
  });
  journal.remove(file);
  return [offered, ['', 'l', 'ia', '/', 'l1/a'].map(query => workspaceSymbols(journal, query, now))];
}

const texts = fc.array(text, { minLength: 1, maxLength: 3 });

test('what is offered in a journal that is edited is what is offered in one that is read afresh', () => {
  fc.assert(fc.property(texts, fc.array(step, { maxLength: 12 }), (files, steps) => {
    const journal = new Journal();
    files.forEach((each, index) => journal.set(`${'cab'[index]!}.germ`, each));
    let day = dayOf(2026, 1, 12)!;
    let settings = {};
    // Asked for before and in between, it follows the edits from there.
    offeredIn(journal, day);
    for (const each of steps) {
      doTo(journal, each);
      if (each.kind === 'settings') settings = { soakHours: each.soakHours };
      if (each.kind === 'time') day += each.days;
      if (each.kind === 'check') offeredIn(journal, day);
    }
    const fresh = new Journal();
    fresh.settings = settings;
    for (const [name, { text: store }] of journal.files) fresh.set(name, store.text());
    expect(offeredIn(journal, day)).toEqual(offeredIn(fresh, day));
  }), { numRuns: 60 });
});
