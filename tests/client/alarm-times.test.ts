import fc from 'fast-check';
import { expect, test } from 'vitest';
import { afterAnswer, afterRings, ringsAt, stillRung, type Rung } from '../../client/src/alarm-times.ts';

const MINUTE = 60_000;
const lead = 15 * MINUTE;
const soak = { key: 'VER-24/A 2026-01-10 19:00', end: 100 * MINUTE };

const again = 15 * MINUTE;

/**
 * Rings in the course of time, looked at every minute; a stretch in which the editor is closed is left out. Each is
 * answered at once, if `answers`.
 */
function ringsOver(minutes: number[], answers = true): string[] {
  const soaks = [soak];
  let rung: Rung = {};
  return minutes.flatMap(minute => {
    rung = stillRung(minute * MINUTE, rung, soaks, lead);
    const rings = ringsAt(minute * MINUTE, soaks, rung, lead);
    // What is kept survives a restart as text.
    rung = JSON.parse(JSON.stringify(afterRings(minute * MINUTE, rung, rings, soaks, again))) as Rung;
    if (answers && rings.length > 0) rung = afterAnswer(rung, soak.key);
    return rings.map(({ kind, missed }) => `${minute} ${kind}${missed ? ' missed' : ''}`);
  });
}

const from = (start: number, end: number) => Array.from({ length: end - start }, (_, i) => start + i);

test('a soak rings a chosen time before its end and at its end, once each', () => {
  expect(ringsOver(from(0, 300))).toEqual(['85 before', '100 end']);
});

test('what ended while the editor was closed is told once, as missed', () => {
  expect(ringsOver([...from(0, 50), ...from(130, 200)])).toEqual(['130 end missed']);
});

test('a soak that is first seen shortly before its end rings at once and again at the end', () => {
  expect(ringsOver(from(95, 120))).toEqual(['95 before', '100 end']);
});

test('an alarm that was put off rings again at the time asked for, once', () => {
  const rung: Rung = { [soak.key]: { before: true, end: true, again: 110 * MINUTE } };
  expect(ringsAt(109 * MINUTE, [soak], rung, lead)).toEqual([]);
  const rings = ringsAt(110 * MINUTE, [soak], rung, lead);
  expect(rings.map(({ kind }) => kind)).toEqual(['again']);
  const next = afterAnswer(afterRings(110 * MINUTE, rung, rings, [soak], again), soak.key);
  expect(ringsAt(111 * MINUTE, [soak], next, lead)).toEqual([]);
});

test('an alarm that was put off before the end rings again before it, and at the end too', () => {
  const rung: Rung = { [soak.key]: { before: true, again: 95 * MINUTE } };
  const rings = ringsAt(95 * MINUTE, [soak], rung, lead);
  expect(rings).toEqual([{ soak, kind: 'again', over: false, missed: false }]);
  const next = afterAnswer(afterRings(95 * MINUTE, rung, rings, [soak], again), soak.key);
  expect(ringsAt(99 * MINUTE, [soak], next, lead)).toEqual([]);
  expect(ringsAt(100 * MINUTE, [soak], next, lead)).toEqual([{ soak, kind: 'end', over: true, missed: false }]);
});

test('an alarm that was put off, and whose end then passed unheard, is told once as missed', () => {
  const rung: Rung = { [soak.key]: { before: true, again: 95 * MINUTE } };
  const rings = ringsAt(200 * MINUTE, [soak], rung, lead);
  expect(rings).toEqual([{ soak, kind: 'again', over: true, missed: true }]);
  const next = afterAnswer(afterRings(200 * MINUTE, rung, rings, [soak], again), soak.key);
  expect(ringsAt(201 * MINUTE, [soak], next, lead)).toEqual([]);
});

test('an end that nobody answers rings again and again, until somebody does', () => {
  expect(ringsOver(from(80, 140), false)).toEqual(['85 before', '100 end', '115 again', '130 again']);
});

test('an alarm that rang because the clock was ahead rings again when its time comes, answered or not', () => {
  expect(ringsOver([...from(1500, 1502), ...from(10, 120)])).toEqual(['1500 end missed', '85 before', '100 end']);
  expect(ringsOver([...from(1500, 1502), ...from(10, 120)], false)).toEqual(['1500 end missed', '85 before', '100 end', '115 again']);
  expect(ringsOver([...from(90, 92), ...from(10, 120)])).toEqual(['90 before', '85 before', '100 end']);
});

test('a clock that is set right by some seconds rings nothing twice', () => {
  expect(ringsOver([85, 84.5, 85, 100, 99.5, 100, 101])).toEqual(['85 before', '100 end']);
});

test('a soak without a time of day has no alarm', () => {
  expect(ringsAt(0, [{ key: 'A', end: undefined }], {}, lead)).toEqual([]);
});

test('soaks that run no longer are forgotten', () => {
  expect(afterRings(0, { gone: { end: true } }, [], [soak], again)).toEqual({});
});

test('whenever the editor is open, nothing that is answered rings more than once before and once at the end', () => {
  fc.assert(fc.property(fc.uniqueArray(fc.integer({ min: 0, max: 300 })), minutes => {
    const rings = ringsOver(minutes.sort((a, b) => a - b)).map(ring => ring.split(' ')[1]);
    expect(rings.length).toBe(new Set(rings).size);
    if (minutes.some(minute => minute >= 100)) expect(rings).toContain('end');
  }));
});
