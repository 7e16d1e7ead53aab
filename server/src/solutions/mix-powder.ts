/** A solution from powder: weighed, or a packet halved by eye. */
import {
  dissolvedMg,
  type Exact,
  isPositive,
  massInMg,
  strengthOf,
  volumeHolding,
} from './amounts.ts';
import { cautionsFor } from './cautions.ts';
import { percentText, showMass, showStrength, showVolume } from './display.ts';
import { measure, type Measurement, stepError, stepErrorText, tooCoarse } from './measurable.ts';
import type { MixRefusal, MixSource, PlannedWay } from './mix-plan.ts';
import { bottled, planned, refusal, resultOf, type Task, vesselFor } from './mix-task.ts';
import { refused } from './outcome.ts';
import { type Content, contentOf, type Purity } from './purity.ts';
import { allAsStock, halvedText, halvingsFor, insteadOfWeighing, MOST_ML, type Remedy } from './remedies.ts';
import { dissolve, halve, makeUp, type Step, trueStrength, weigh } from './steps.ts';
import { halvedMass } from './stock.ts';
import { strengthText } from './strength.ts';
import { HALVING_ERROR } from './uncertainty.ts';

type Powder = Extract<MixSource, { kind: 'powder' }>;
type Packet = Extract<MixSource, { kind: 'packet' }>;

export function planFromPowder(task: Task, { purity, packet }: Powder): PlannedWay | MixRefusal {
  const { agent, ppm, volumeMl, bench, isMost } = task;
  const content = powderContent(task, purity);
  if ('possible' in content) return content;
  const { share } = content;
  const pureMg = dissolvedMg(ppm, volumeMl);
  const wantedMg = pureMg.div(share);
  const scale = measure(wantedMg, 'mass', bench, isMost ? 'down' : 'nearest');
  if (!scale.measurable) {
    const why = refused('too-little-to-weigh', scale.message);
    return refusal(agent, why, insteadOfWeighing(task, share, scale.least));
  }
  const kitchen = measure(wantedMg, 'mass', 'kitchen');
  const weighed = scale.best;
  return finish(task, content, {
    method: 'powder',
    powderMg: weighed.measured,
    makeMl: volumeMl,
    powderError: [stepError(weighed)],
    counted: `mass to ${stepErrorText(weighed)}`,
    firstStep: weigh(agent, wantedMg, weighed, packet),
    amounts: { powder: planned(wantedMg, weighed), pure: showMass(weighed.measured.mul(share)) },
    inKitchen: kitchen.measurable
      ? undefined
      : {
        message: tooCoarse(wantedMg, kitchen.finest) ?? kitchen.message,
        remedies: insteadOfWeighing({ ...task, bench: 'kitchen' }, share, kitchen.least),
      },
    alternatives: [],
  });
}

export function planFromPacket(task: Task, packet: Packet): PlannedWay | MixRefusal {
  const { agent, ppm, volumeMl } = task;
  const content = powderContent(task, packet.purity);
  if ('possible' in content) return content;
  const { share } = content;
  const packetMg = massInMg(packet.mass);
  if (!isPositive(packetMg)) return refusal(agent, refused('not-positive', 'The packet must hold more than 0.'));
  const times = packet.halved ?? halvingsFor(packetMg, share, ppm, volumeMl) ?? 0;
  const portion = halvedMass(packetMg, times);
  if (!portion.ok) return refusal(agent, portion);
  const makeMl = volumeHolding(portion.value.mul(share), ppm);
  if (makeMl.lt(volumeMl)) return tooSmall(task, packetMg, times, portion.value, share);
  if (makeMl.gt(volumeMl) && makeMl.gt(MOST_ML)) {
    const made = `${showVolume(makeMl).text} of ${strengthText(ppm, task.asked.unit, agent)}`;
    const text = `${showMass(portion.value).text} of powder would make ${made}, far more than you asked for.`;
    return refusal(agent, refused('packet-too-large', text), allAsStock(task, share, portion.value));
  }
  return finish(task, content, {
    method: 'packet',
    powderMg: portion.value,
    makeMl,
    powderError: Array.from({ length: times }, () => HALVING_ERROR),
    counted: `halving by eye, ${percentText(HALVING_ERROR)} each time (common practice, no source)`,
    firstStep: halve(agent, packetMg, times, portion.value),
    amounts: {
      packet: { mass: showMass(packetMg), halved: times, portion: showMass(portion.value) },
      pure: showMass(portion.value.mul(share)),
    },
    inKitchen: undefined,
    alternatives: times === 0 ? [] : allAsStock(task, share, packetMg),
  });
}

function powderContent({ agent }: Task, purity: Purity | undefined): Content | MixRefusal {
  if (agent.form === 'liquid') {
    const text = `${agent.word} is sold as a liquid, so it cannot be weighed. Give the strength on its label to dilute it.`;
    return refusal(agent, refused('not-a-powder', text));
  }
  const content = contentOf(agent, purity);
  return content.ok ? content.value : refusal(agent, content);
}

interface Taken {
  readonly method: 'powder' | 'packet';
  readonly powderMg: Exact;
  readonly makeMl: Exact;
  /** Relative errors of the powder. */
  readonly powderError: readonly Exact[];
  readonly counted: string;
  readonly firstStep: Step;
  readonly amounts: Omit<PlannedWay['amounts'], 'makeUpTo'>;
  readonly inKitchen: PlannedWay['inKitchen'];
  readonly alternatives: PlannedWay['alternatives'];
}

function finish(task: Task, content: Content, taken: Taken): PlannedWay | MixRefusal {
  const { agent, asked: { unit } } = task;
  const vessel = vesselFor(task, taken.makeMl);
  if (!vessel.measurable) return refusal(agent, refused('too-little-to-draw', vessel.message));
  const made: Measurement = vessel.best;
  const ppm = strengthOf(taken.powderMg.mul(content.share), made.measured);
  const leftOver = made.measured.sub(task.volumeMl);
  const justMl = volumeHolding(taken.powderMg.mul(content.share), task.ppm);
  const off = trueStrength(ppm, task.ppm, unit, agent, justMl);
  const isByEye = taken.method === 'packet' && taken.powderError.length > 0;
  return {
    possible: true,
    method: taken.method,
    amounts: {
      ...taken.amounts,
      makeUpTo: planned(taken.makeMl, made),
      ...(isPositive(leftOver) ? { leftOver: showVolume(leftOver) } : {}),
    },
    result: resultOf(task, ppm, taken.powderError, [stepError(made)], {
      counted: [...(taken.powderError.length === 0 ? [] : [taken.counted]), `volume to ${stepErrorText(made)}`],
      notCounted: ['purity of the powder', ...(taken.method === 'packet' ? ['mass of the packet'] : [])],
    }),
    steps: [
      taken.firstStep,
      dissolve(agent),
      makeUp(made.measured, undefined, made),
      ...(off === undefined ? [] : [off]),
      ...bottled(task, strengthText(ppm, unit, agent), 'stock', isByEye ? 'about ' : ''),
    ],
    inKitchen: taken.inKitchen,
    alternatives: taken.alternatives,
    assumptions: content.assumptions,
    warnings: [],
    cautions: cautionsFor('powder', [agent]),
  };
}

function tooSmall(task: Task, packetMg: Exact, times: number, portionMg: Exact, share: Exact): MixRefusal {
  const { agent, ppm, volumeMl, asked: { unit } } = task;
  const portion = showMass(portionMg);
  const most = showVolume(volumeHolding(portionMg.mul(share), ppm));
  const weakest = strengthOf(portionMg.mul(share), volumeMl);
  const asked = strengthText(ppm, unit, agent);
  const nearest: Remedy[] = [
    { kind: 'less-volume', text: `It makes ${most.text} of ${asked}.`, amounts: { portion, makeUpTo: most } },
    {
      kind: 'weaker',
      text: `In ${showVolume(volumeMl).text} it makes ${strengthText(weakest, unit, agent)}.`,
      amounts: { portion, makeUpTo: showVolume(volumeMl), strength: showStrength(weakest, 'ppm') },
    },
  ];
  const fewer = halvingsFor(packetMg, share, ppm, volumeMl);
  if (fewer !== undefined && fewer < times) {
    const larger = showMass(packetMg.div(2 ** fewer));
    const makeUpTo = showVolume(volumeHolding(packetMg.mul(share).div(2 ** fewer), ppm));
    const text = `${halvedText(fewer)}, one part is ${larger.text} and makes ${makeUpTo.text} of ${asked}.`;
    nearest.unshift({ kind: 'fewer-halvings', text, amounts: { portion: larger, makeUpTo } });
  }
  const why = `${portion.text} of powder is too little for ${showVolume(volumeMl).text} of ${asked}.`;
  return refusal(agent, refused('packet-too-small', why), nearest);
}
