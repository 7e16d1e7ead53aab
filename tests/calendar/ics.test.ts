import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { due } from '../../server/src/calendar/due.ts';
import { icsOf, type IcsOptions } from '../../server/src/calendar/ics.ts';
import type { Journal } from '../../server/src/journal/journal.ts';
import { journalOf, moment } from './helpers.ts';

const STAMP = Date.UTC(2026, 0, 11, 9, 30);

/** The file, read back by a library other than the one that wrote it. */
function exported(source: string | Journal, now: string, more: Partial<IcsOptions> = {}): ICAL.Component[] {
  return new ICAL.Component(ICAL.parse(fileOf(source, now, more)) as unknown[]).getAllSubcomponents('vevent');
}

function fileOf(source: string | Journal, now: string, more: Partial<IcsOptions> = {}): string {
  const journal = typeof source === 'string' ? journalOf(source) : source;
  const at = moment(now);
  return icsOf([{ items: due(journal, at), now: at, zone: journal.zone }], { stamp: STAMP, ...more });
}

const value = (component: ICAL.Component | undefined, name: string) => String(component?.getFirstPropertyValue(name));
const written = (component: ICAL.Component | undefined, name: string) =>
  component?.getFirstProperty(name)?.toICALString();

const soak = 'lot A Iris alba, 10 seeds\nsoak A 2026-01-10 19:00, water, 24 h, at jar 1\n';
const count = 'lot A Iris alba, 10 seeds\nsow A 2026-01-10, at bag 1 slot 2\n';

describe('the calendar', () => {
  it('is a published VCALENDAR 2.0 with an event for each item', () => {
    const calendar = new ICAL.Component(ICAL.parse(fileOf(`${soak}due A 2026-02-01, ask`, '2026-01-11 08:00')) as unknown[]);
    expect([value(calendar, 'version'), value(calendar, 'prodid'), value(calendar, 'method')])
      .toEqual(['2.0', '-//Plumule//Plumule//EN', 'PUBLISH']);
    expect(calendar.getAllSubcomponents('vevent').map(event => value(event, 'summary'))).toEqual(['A: lift out of water after 24 h', 'A: ask']);
  });

  it('has the counts and the end of the cold of seed in a damp towel, each with the same UID from week to week', () => {
    const towel = 'lot A Iris alba, 10 seeds\nchill A 2026-01-04, 4 C, 4 weeks, at bag 1 slot 2\ncount A 2026-01-25, 0\n';
    const shown = (more: string, now: string) => exported(towel + more, now).map(event => [value(event, 'summary'), value(event, 'uid'), value(event, 'location')]);
    const [stage, next] = ['stage/A/2026-01-04@plumule', 'count/A/2026-01-04@plumule'];
    expect(shown('', '2026-01-26')).toEqual([
      ['A: chill 4 C 4 weeks ends', stage, 'bag 1 slot 2'], ['A: count; last looked at on 2026-01-25 (count)', next, 'bag 1 slot 2'],
    ]);
    expect(shown('count A 2026-02-02, 3\n', '2026-02-03')).toEqual([
      ['Overdue: A: chill 4 C 4 weeks ends', stage, 'bag 1 slot 2'], ['A: count; last looked at on 2026-02-02 (count)', next, 'bag 1 slot 2'],
    ]);
  });

  it('is empty where nothing is due', () => {
    expect(exported('', '2026-01-11')).toEqual([]);
  });

  it('has the plant, the record to write and the record it comes from in the description, and the place', () => {
    const [event] = exported(`--- 2026.germ\n${soak}`, '2026-01-11 08:00');
    expect(value(event, 'description').split('\n')).toEqual([
      'Iris alba', 'Then write: lift A 2026-01-11 19:00', 'From: 2026.germ: soak A 2026-01-10 19:00, water, 24 h, at jar 1',
    ]);
    expect(value(event, 'location')).toBe('jar 1');
    expect(value(event, 'transp')).toBe('TRANSPARENT');
  });
});

describe('an item of the last day that there is', () => {
  it('is timed as long as its event ends on that day, else of the whole day, with no day behind it', () => {
    const start = (hours: string) => {
      const [event] = exported(`lot A Iris alba\nsoak A 9999-12-31 ${hours}, water, 3 h`, '9999-12-31 21:00');
      return [written(event, 'dtstart'), written(event, 'dtend')];
    };
    expect(start('20:44')).toEqual(['DTSTART:99991231T234400', 'DTEND:99991231T235900']);
    expect(start('20:45')).toEqual(['DTSTART;VALUE=DATE:99991231', undefined]);
  });
});

describe('an item of a day', () => {
  it('is an event of the whole day, with an alarm in the morning', () => {
    const [event] = exported(count, '2026-01-11');
    expect([written(event, 'dtstart'), written(event, 'dtend')]).toEqual(['DTSTART;VALUE=DATE:20260117', 'DTEND;VALUE=DATE:20260118']);
    expect(written(event?.getFirstSubcomponent('valarm') ?? undefined, 'trigger')).toBe('TRIGGER;RELATED=START:PT9H');
    const [early] = exported(count, '2026-01-11', { dayAlarm: 390 });
    expect(written(early?.getFirstSubcomponent('valarm') ?? undefined, 'trigger')).toBe('TRIGGER;RELATED=START:PT6H30M');
  });

  it('that is due today rings while its alarm still lies ahead', () => {
    const rings = (now: string, more: Partial<IcsOptions> = {}) => exported(count, now, more)[0]?.getFirstSubcomponent('valarm') !== null;
    expect(['2026-01-17', '2026-01-17 08:59', '2026-01-17 09:00'].map(now => rings(now))).toEqual([true, true, false]);
    expect(rings('2026-01-17', { dayAlarm: 1 })).toBe(true);
  });

  it('that is overdue stands on today and says since when it is due', () => {
    const [event] = exported(count, '2026-01-20');
    expect(written(event, 'dtstart')).toBe('DTSTART;VALUE=DATE:20260120');
    expect(value(event, 'summary')).toMatch(/^Overdue: A: count/);
    expect(value(event, 'description')).toContain('\nDue since 2026-01-17\n');
  });
});

describe('an item with a time of day', () => {
  const at = (zone: string, start: string, hours: number) =>
    written(exported(`${zone}lot A Iris alba\nsoak A ${start}, water, ${hours} h`, start)[0], 'dtstart');

  it('stands in universal time where the journal names a zone, and floats where it names none', () => {
    // RFC 5545, 3.3.5: half past one in the afternoon of 14 July 1997 in New York.
    expect(at('zone America/New_York\n', '1997-07-14 12:30', 1)).toBe('DTSTART:19970714T173000Z');
    // The same section: 11 in the evening of 18 January 1998, whoever reads it.
    expect(at('', '1998-01-18 22:00', 1)).toBe('DTSTART:19980118T230000');
    // And 7 o'clock of universal time on 19 January 1998.
    expect(at('zone Etc/UTC\n', '1998-01-19 06:00', 1)).toBe('DTSTART:19980119T070000Z');
  });

  it('is right when the clocks change in the soak', () => {
    expect(at('zone Europe/Vienna\n', '2026-03-28 19:00', 24)).toBe('DTSTART:20260329T180000Z');
    expect(at('zone Europe/Vienna\n', '2026-10-24 19:00', 24)).toBe('DTSTART:20261025T170000Z');
  });

  it('is ahead, and rings, where the clocks show an earlier time by then', () => {
    // IANA time zone database: at 03:00 of universal time on 2026-04-05 midnight is 23:00 in Santiago again.
    const soaked = (start: string, minutes: number) =>
      exported(`zone America/Santiago\nlot A Iris alba\nsoak A ${start}, water, ${minutes} min`, start)[0];
    expect(written(soaked('2026-04-04 23:59', 3), 'dtstart')).toBe('DTSTART:20260405T030200Z');
    expect(soaked('2026-04-04 23:40', 50)?.getAllSubcomponents('valarm')).toHaveLength(2);
    expect(soaked('2026-04-04 23:40', 25)?.getAllSubcomponents('valarm')).toHaveLength(1);
  });

  it('rings before its time and at it', () => {
    const rings = (more: Partial<IcsOptions>) => exported(soak, '2026-01-11 08:00', more)[0]
      ?.getAllSubcomponents('valarm').map(alarm => [value(alarm, 'action'), written(alarm, 'trigger')]);
    expect(rings({})).toEqual([['DISPLAY', 'TRIGGER;RELATED=START:-PT30M'], ['DISPLAY', 'TRIGGER;RELATED=START:PT0S']]);
    // RFC 5545, 3.8.6.3: 15 minutes before.
    expect(rings({ leadMinutes: 15 })?.[0]).toEqual(['DISPLAY', 'TRIGGER;RELATED=START:-PT15M']);
    expect(rings({ leadMinutes: 0 })).toHaveLength(1);
  });
});

describe('a calendar that takes the file in again', () => {
  /** What a calendar keeps: by UID the event of the highest SEQUENCE. */
  function takeIn(files: readonly ICAL.Component[][]): ICAL.Component[] {
    const kept = new Map<string, ICAL.Component>();
    for (const event of files.flat()) {
      const uid = value(event, 'uid');
      const known = kept.get(uid);
      if (!known || Number(value(known, 'sequence')) < Number(value(event, 'sequence'))) kept.set(uid, event);
    }
    return [...kept.values()];
  }

  it('has each item once, as the later file says, whatever lines came above it', () => {
    const first = exported(count, '2026-01-11');
    const again = exported(`# A heading\n\n${count}count A 2026-01-14, 1\n`, '2026-01-15', { stamp: STAMP + 4 * 86_400_000 });
    for (const files of [[first, again], [again, first]]) {
      expect(takeIn(files).map(event => written(event, 'dtstart'))).toEqual(['DTSTART;VALUE=DATE:20260121']);
    }
    expect(value(again[0], 'last-modified')).toBe('2026-01-15T09:30:00Z');
    expect(value(again[0], 'dtstamp')).toBe('2026-01-15T09:30:00Z');
  });

  it('has two where there are two', () => {
    expect(takeIn([exported(`${count}due A 2026-02-01, ask\ndue A 2026-02-01, write`, '2026-01-11')])).toHaveLength(3);
  });

  it('counts SEQUENCE within the whole numbers of iCalendar for centuries', () => {
    const [event] = exported(count, '2026-01-11', { stamp: Date.UTC(2500, 0) });
    expect(Number(value(event, 'sequence'))).toBeLessThan(2 ** 31);
    expect(Number(value(exported(count, '2026-01-11', { stamp: 0 })[0], 'sequence'))).toBe(0);
  });
});

describe('the calendar of two journals', () => {
  it('has the items of both, each in the zone of its journal, and never two of one UID', () => {
    const now = moment('2026-01-11 08:00');
    const parts = ['Europe/Vienna', 'America/New_York'].map(zone => {
      const journal = journalOf(`zone ${zone}\n${soak}`);
      return { items: due(journal, now), now, zone: journal.zone };
    });
    const events = new ICAL.Component(ICAL.parse(icsOf(parts, { stamp: STAMP })) as unknown[]).getAllSubcomponents('vevent');
    expect(events.map(event => written(event, 'dtstart'))).toEqual(['DTSTART:20260111T180000Z', 'DTSTART:20260112T000000Z']);
    expect(events.map(event => value(event, 'uid'))).toEqual(['soak/A/2026-01-10T19:00@plumule', 'soak/A/2026-01-10T19:00@2.plumule']);
  });
});

describe('text of the journal', () => {
  const reminder = (text: string) => `lot A Iris alba\ndue A 2026-02-01, ${text}`;
  const summary = (text: string) => value(exported(reminder(text), '2026-01-11')[0], 'summary');

  it('reads back as it was written, whatever iCalendar makes of its signs', () => {
    const hostile = [
      'a, b; c: d', 'back\\slash \\n no line end', '"quoted" ;VALUE=DATE:20260101', 'BEGIN:VEVENT', 'END:VCALENDAR', '🌱 種子 ünïcode', '^n ^^ ^\'',
    ];
    for (const text of hostile) expect(summary(text)).toBe(`A: ${text}`);
  });

  it('loses only what no calendar may hold', () => {
    expect(summary('bell\u0007 and half \ud83c a sign')).toBe('A: bell\ufffd and half \ufffd a sign');
  });

  it('is one event and reads back, whatever it is', () => {
    const text = fc.string({ unit: 'binary', maxLength: 200 }).map(each => each.replaceAll(/[\p{Cc}\p{Cs}\u2028\u2029]/gu, '').trim());
    fc.assert(fc.property(text.filter(each => each !== '' && !/^"[^"]*"$/.test(each)), each => {
      const file = fileOf(reminder(each), '2026-01-11');
      const events = new ICAL.Component(ICAL.parse(file) as unknown[]).getAllSubcomponents('vevent');
      expect(events.map(event => value(event, 'summary'))).toEqual([`A: ${each}`]);
    }));
  });

  it('stands in lines of at most 75 octets that end in CRLF', () => {
    const text = fc.string({ unit: 'binary', minLength: 1, maxLength: 400 });
    fc.assert(fc.property(text, each => {
      const file = fileOf(reminder(`x${each.replaceAll(/[\p{Cc}\u2028\u2029]/gu, '')}`), '2026-01-11');
      expect(file.endsWith('END:VCALENDAR\r\n')).toBe(true);
      expect(file.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
      for (const line of file.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
    }));
  });
});
