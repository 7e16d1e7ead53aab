// Which zones are southern against the coordinates in the time zone database. On Debian: apt-get install tzdata
import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { isSouthern } from '../../../server/src/model/southern.ts';

const TABLE = '/usr/share/zoneinfo/zone.tab';

// Only a run that is meant to check everything fails for want of the table.
const missing = !existsSync(TABLE) && !process.env.CI;
describe.skipIf(missing)(`The time zone database${missing ? ' (not installed here: nothing was compared)' : ''}`, () => {
  it('has the place of a zone south of the equator where we have it', () => {
    // Columns: country, latitude with its sign and longitude, zone, comment.
    const rows = readFileSync(TABLE, 'utf8').split('\n').filter(line => line !== '' && !line.startsWith('#')).map(line => line.split('\t'));
    expect(rows.length).toBeGreaterThan(300);
    expect(rows.filter(([, at, zone]) => isSouthern(zone) !== at!.startsWith('-')).map(([,, zone]) => zone)).toEqual([]);
  });
});
