/** What to do with a packet as plain data for other programs; syntaxes/json.md describes the shape. */
import type { Advice } from '../../advice/advice.ts';
import { offerIn } from '../../advice/choice.ts';
import type { Offer } from '../../advice/offer.ts';
import type { Tried, TriedAgent } from '../../advice/tried.ts';
import { isoMoment, stageName } from '../../calendar/ask.ts';
import { advisedRecords } from '../../features/actions/advised.ts';
import { answerText, stepsBefore } from '../../words/advice.ts';
import { groupLabel } from '../../words/trials.ts';
import type { Journal } from '../../journal/journal.ts';
import type { JournalLine } from '../../journal/journal-file.ts';
import type { Lot } from '../../journal/life.ts';
import { isoOf } from '../../model/day.ts';
import { isUndefined, type Measured, type Undefined } from '../../measures/measured.ts';
import { toNumber } from '../../solutions/display.ts';
import type { UntreatedShare } from '../../trials/untreated-shares.ts';

/** Version of the shape; it grows when something in it changes its meaning or goes, not when something comes. */
export const ADVICE_SHAPE = 1;

export function adviceData(advice: Advice, journal: Journal): object {
  const { lot, now, seed, age, species, genus, forms, untreated, leftOut, ready, guides } = advice;
  const { choice, division, supplies } = advice;
  const records = advisedRecords(advice, journal);
  const offer = offerIn(choice);
  return {
    now: isoMoment(now), lot: lot.id, plant: lot.plant ?? null,
    advice: seed ? choice.kind : null,
    because: choice.kind === 'try' || choice.kind === 'leave' ? choice.because : null,
    sentence: seed ? answerText(advice) : null,
    seed: seed ? {
      batches: seed.batches.map(({ path }) => path), least: seed.seeds?.least ?? null, most: seed.seeds?.most ?? null,
    } : null,
    age: age ?? null,
    treatment: offer ? offerData(offer) : null,
    division: division ? {
      treated: division.sides?.treated ?? null, untreated: division.sides?.untreated ?? null,
      tooFew: division.isTooFew, estimated: division.isEstimated,
      untreatedShare: division.share.value, untreatedShareFromRecords: division.share.own,
      visible: division.plan ? valueOf(division.plan.visible) : null,
    } : null,
    supplies: supplies ? {
      bottles: supplies.bottles.map(({ stock: { solution: { id, entry } }, share }) => (
        { id, share: toNumber(share), ...at(entry.line) })),
      packets: supplies.packets.map(({ stock: { solution: { id, entry } }, isPast }) => (
        { id, pastItsDate: isPast, ...at(entry.line) })),
    } : null,
    records: records ? {
      split: records.split ?? null, reminders: records.reminders, soaks: records.soaks.map(({ line }) => line),
    } : null,
    ownRecords: species.map(agentData), forms: forms.map(agentData), genus: genus.map(agentData),
    untreated: untreated.map(shareData),
    leftOut: leftOut.map(({ batch, why }) => ({ batch: batch.path, reason: why.undefined })),
    ready: ready ? {
      lot: ready.lot.id, germinated: ready.readiness.x, of: ready.readiness.n, halfByDay: ready.readiness.halfBy,
    } : null,
    guides: guides.map(({ plant, source, line }) => ({ plant, source: source ?? null, ...at(line) })),
  };
}

function valueOf(visible: Measured): number | Undefined {
  return isUndefined(visible) ? visible : visible.value;
}

function offerData(offer: Offer): object {
  const { agent, ppm, text, soak, guide, above, undissolved, next, isLate } = offer;
  return {
    agent: agent.word, ppm: ppm ?? null, record: text ?? null, soak,
    aboveLimit: above !== undefined, aboveSolubility: undissolved !== undefined,
    after: stepsBefore(offer), then: next.map(stageName), onWatchedSeed: isLate,
    guide: guide ? at(guide.line) : null,
  };
}

function agentData({ agent, doses, together }: TriedAgent): object {
  return { agent: agent.word, doses: doses.map(doseData), together: together ?? null };
}

function doseData({ ppm, isAbout, verdict, sentence, difference, lots, isEstimated }: Tried): object {
  return {
    ppm: ppm ?? null, about: isAbout, verdict, sentence, difference: difference ?? null, estimated: isEstimated,
    lots: lots.map(lotData),
  };
}

function shareData({ winter, lot, group, pooled: { x, n, interval }, byDay, open }: UntreatedShare): object {
  return {
    winter, ...lotData(lot), seed: groupLabel(group), germinated: x, of: n, interval, byDay, open,
    collected: lot.collected ? { first: isoOf(lot.collected.first), last: isoOf(lot.collected.last) } : null,
  };
}

function lotData({ id, definition }: Lot): object {
  return { lot: id, ...at(definition.line) };
}

function at({ store, number }: JournalLine): { file: string; line: number } {
  return { file: store.name, line: number + 1 };
}
