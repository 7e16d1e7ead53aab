// Random wall-clock and calendar arithmetic against Python's zoneinfo, datetime and calendar. On Debian:
// apt-get install python3 tzdata
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { due } from '../../../server/src/calendar/due.ts';
import { icsOf } from '../../../server/src/calendar/ics.ts';
import { printMoment, printTime } from '../../../server/src/journal/moment.ts';
import { isoOf } from '../../../server/src/model/day.ts';
import { day, journalOf, moment } from '../helpers.ts';

type Case = readonly ['soak', string, string, number] | readonly ['months' | 'days', string, number];

// Zones whose rules differ: by the hour and the half hour, on both sides of the equator, at midnight, and none.
const zones = [
  'Europe/Vienna', 'Europe/London', 'Europe/Dublin', 'America/New_York', 'America/St_Johns', 'America/Santiago',
  'Australia/Lord_Howe', 'Australia/Sydney', 'Pacific/Auckland', 'Pacific/Chatham', 'Asia/Kolkata', 'Asia/Tehran',
  'Africa/Johannesburg', 'Etc/UTC',
];

const date = fc.integer({ min: day('1996-01-01'), max: day('2026-12-31') }).map(isoOf);
/** Around the days on which most clocks change. */
const changing = fc.tuple(fc.integer({ min: 1996, max: 2026 }), fc.constantFrom('03-24', '10-24', '04-01', '09-01', '11-01'), fc.nat(7))
  .map(([year, from, more]) => isoOf(day(`${year}-${from}`) + more));
const time = fc.nat(1439).map(printTime);
const soak = fc.tuple(fc.constant('soak'), fc.constantFrom(...zones), fc.tuple(fc.oneof(date, changing), time)
  .map(([on, at]) => `${on} ${at}`), fc.integer({ min: 1, max: 2880 }));
const span = fc.oneof(
  fc.tuple(fc.constant('months'), date, fc.integer({ min: 1, max: 130 })),
  fc.tuple(fc.constant('days'), date, fc.integer({ min: 1, max: 4000 })),
);
const cases = fc.sample(fc.oneof(soak, span), { numRuns: 3000 }) as unknown as readonly Case[];

function ours(given: Case): unknown {
  if (given[0] === 'soak') {
    const [, zone, start, minutes] = given;
    const journal = journalOf(`zone ${zone}\nlot A Iris alba\nsoak A ${start}, water, ${minutes} min`);
    const now = moment(start);
    const items = due(journal, now);
    return [printMoment(items[0]!), /DTSTART:(\w+)/.exec(icsOf([{ items, now, zone }], { stamp: 0 }))?.[1]];
  }
  const [unit, start, number] = given;
  return isoOf(due(journalOf(`lot A Iris alba\nchill A ${start}, ${number} ${unit}`), moment(start))[0]!.day);
}

const probe = ['-c', 'import zoneinfo; zoneinfo.ZoneInfo("Europe/Vienna")'];
const python = ['/usr/bin/python3', 'python3'].find(command => spawnSync(command, probe).status === 0);

function theirs(): readonly unknown[] {
  const script = fileURLToPath(new URL('clocks.py', import.meta.url));
  const run = spawnSync(python!, [script], { input: JSON.stringify(cases), encoding: 'utf8' });
  if (run.status !== 0) throw new Error(run.stderr);
  return JSON.parse(run.stdout) as readonly unknown[];
}

// Only a run that is meant to check everything fails for want of the program.
const missing = python === undefined && !process.env.CI;
describe.skipIf(missing)(`Python${missing ? ' (not installed here: nothing was compared)' : ''}`, () => {
  it('has every soak and every stage end when we have it', () => {
    expect(python, 'python3 with zone data is not installed').toBeDefined();
    const answers = theirs();
    expect(answers).toHaveLength(cases.length);
    const differing = cases.flatMap((given, i) => {
      const own = ours(given);
      return JSON.stringify(own) === JSON.stringify(answers[i]) ? [] : [{ given, own, python: answers[i] }];
    });
    expect(differing).toEqual([]);
  });
});
