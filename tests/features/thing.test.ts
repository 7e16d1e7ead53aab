import { describe, expect, test } from 'vitest';
import { thingAt, type Thing } from '../../server/src/features/thing.ts';
import { variantsOf } from '../support/fixture.ts';
import { journalOf } from './journals.ts';

const journals = variantsOf(`
  --- 2026.germ
  lot VER-24 Veratrum nigrum, 60 seeds, collected 2025-09
  ^^^ keyword lot
      ^^^^^^ lot VER-24
                                        ^^^^^^^^^^^^^^^^^ collected
  split VER-24, A 24 seeds
        ^^^^^^ lot VER-24
                ^ batch VER-24/A
  split VER-24/A, 1 12 seeds
        ^^^^^^ lot VER-24
  stock G1 2026-01-09, GA3 20 mg, 20 mL
        ^^ stock G1
           ^^^^^^^^^^ date 20462
                       ^^^ agent GA3
  dilute G2 2026-01-09, from G1 10 mL, to 20 mL
                             ^^ stock G1
  regime cold, chill 4 C 90 days
         ^^^^ regime cold
  agent kelp, an extract
        ^^^^ agent kelp
  limit GA3, 1000 ppm, for Veratrum
        ^^^ agent GA3
             ^^^^^^^^ strength GA3
                           ^^^^^^^^ plant Veratrum
  limit soak, 24 h
        ^^^^ limited soak
              ^^^^ fact duration
  zone Europe/Vienna
  day 2026-01-10
      ^^^^^^^^^^ date 20463
  soak VER-24/A 19:00, GA3 500 ppm, kelp unmeasured, G2 10 mL, until 2026-01-11 18:30
                ^^^^^ date 20463
                       ^^^ agent GA3
                           ^^^^^^^ strength GA3
                                    ^^^^ agent kelp
                                         ^^^^^^^^^^ strength kelp
                                                     ^^ stock G2
                                                        ^^^^^ stock G2
                                                                   ^^^^^^^^^^^^^^^^ date 20464
  sow VER-24/A/1 2026-01-11, 12 seeds, 18 C, regime cold
                             ^^^^^^^^ fact seeds
                                       ^^^^ fact temperature
                                                    ^^^^ regime cold
  count VER-24/A/1, =3 germinated, 1 rotted
                    ^^^^^^^^^^^^^ count germinated
                                   ^^^^^^^^ count rotted
  note G1 2026-02-01, still clear
       ^^ stock G1
  note cold 2026-02-01, too short
       ^^^^ regime cold
  guide Veratrum, GA3 500 ppm
        ^^^^^^^^ plant Veratrum
`);

function name(thing: Thing | undefined): string | undefined {
  switch (thing?.kind) {
    case undefined: return undefined;
    case 'batch': return `batch ${thing.path}`;
    case 'lot': case 'stock': case 'regime': case 'agent': return `${thing.kind} ${thing.id}`;
    case 'keyword': return `keyword ${thing.keyword}`;
    case 'plant': return `plant ${thing.name}`;
    case 'limited': return `limited ${thing.word}`;
    case 'date': return `date ${thing.day}`;
    case 'collected': return 'collected';
    case 'strength': return `strength ${thing.agent}`;
    case 'count': return `count ${thing.fact.what}`;
    case 'fact': return `fact ${thing.fact.type}`;
  }
}

describe.each(journals)('what stands at a position, $name', ({ fixture }) => {
  const journal = journalOf(fixture);

  test.each(fixture.expected)('$label', ({ file, line, start, end, label }) => {
    for (let character = start; character <= end; character++) {
      expect(`${character} ${name(thingAt(journal, file, { line, character }))}`).toBe(`${character} ${label}`);
    }
  });
});

describe('what stands at a position', () => {
  const { fixture } = journals[0]!;
  const journal = journalOf(fixture);
  const file = '2026.germ';
  const behind = (words: string) => {
    const lines = fixture.files[0]!.text.split('\n');
    const line = lines.findIndex(each => each.includes(words));
    return thingAt(journal, file, { line, character: lines[line]!.indexOf(words) + words.length });
  };

  test('in a path the part that the cursor is in, with all before it', () => {
    expect(name(behind('sow VER'))).toBe('lot VER-24');
    expect(name(behind('sow VER-24/'))).toBe('batch VER-24/A');
    expect(name(behind('sow VER-24/A/'))).toBe('batch VER-24/A/1');
    expect(behind('sow VER-24/')?.place).toMatchObject({ start: 4, end: 12 });
  });

  test('nothing between two facts, and outside the text', () => {
    expect(behind('lot VER-24 Veratrum nigrum, 60 seeds, ')?.kind).toBe('collected');
    expect(behind('lot VER-24 Veratrum nigrum,')).toBeUndefined();
    expect(thingAt(journal, file, { line: 999, character: 0 })).toBeUndefined();
    expect(thingAt(journal, file, { line: -1, character: 0 })).toBeUndefined();
    expect(thingAt(journal, 'other.germ', { line: 0, character: 0 })).toBeUndefined();
  });
});
