import { describe, test } from 'vitest';
import { expectAllMarked } from './marked.ts';

describe('a zone that nobody knows', () => {
  test('is marked; names of the IANA list are not', () => {
    expectAllMarked(`
      zone Europe/Wien
           ^^^^^^^^^^^ unknown-zone
    `);
    for (const zone of ['Europe/Vienna', 'America/New_York', 'Etc/GMT+5', 'UTC']) expectAllMarked(`zone ${zone}`);
  });

  test('is marked where it is a number or a word of the language', () => {
    expectAllMarked(`
      zone constructor
           ^^^^^^^^^^^ unknown-zone
    `);
  });
});
