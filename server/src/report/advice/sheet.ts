/** What to do with a packet of seed as a page: the answer first, then what it rests on. */
import type { Advice, SetAside } from '../../advice/advice.ts';
import { offerIn } from '../../advice/choice.ts';
import { ageOf, agesBeside, type Age, type AsOld } from '../../advice/seed.ts';
import type { Division } from '../../advice/division.ts';
import type { Offer } from '../../advice/offer.ts';
import type { Tried, TriedAgent } from '../../advice/tried.ts';
import { stageName } from '../../calendar/ask.ts';
import { advisedRecords } from '../../features/actions/advised.ts';
import { ageText, answerText, doseName, lotsText, offerName, recordName, seedText, stepsBefore } from '../../words/advice.ts';
import { guideStepsText } from '../../words/guides.ts';
import { ladderNote } from '../../words/ladders.ts';
import { planBasis } from '../../words/plans.ts';
import { preparationText, readyText } from '../../words/ready.ts';
import { groupLabel } from '../../words/trials.ts';
import { remarkText } from '../../words/remarks.ts';
import type { Journal } from '../../journal/journal.ts';
import { printMoment } from '../../journal/moment.ts';
import type { Day } from '../../model/day.ts';
import { genusIn, speciesIn } from '../../model/plant.ts';
import { differsInText } from '../../measures/verdict-text.ts';
import { isUndefined } from '../../measures/measured.ts';
import { percent } from '../../measures/verdict-words.ts';
import { THRESHOLDS } from '../../measures/thresholds.ts';
import { listed } from '../../syntax/nearest.ts';
import { cautionsFor, type BenchWork } from '../../solutions/cautions.ts';
import { trialOf } from '../../trials/lot-trial.ts';
import type { ReadyRecord } from '../../trials/ready.ts';
import { allOf, deathsIn, hadItsTime, isWaiting, type UntreatedShare } from '../../trials/untreated-shares.ts';
import type { Column } from '../columns.ts';
import type { Item, Passage } from '../passages.ts';
import { untreatedColumns, untreatedText } from '../plant-passages.ts';
import type { Sheet } from '../sheet/sheet.ts';
import { needsPassage } from './needs.ts';

export function adviceSheet(advice: Advice, journal: Journal): Sheet {
  const { lot, now, seed } = advice;
  const { plant = '' } = lot;
  const known = [
    own(advice), untreated(advice), kin('form', speciesIn(plant), advice.forms),
    kin('species', genusIn(plant), advice.genus), guides(advice),
  ];
  const passages = seed ? [
    ...known, division(advice), needsPassage(advice), records(advice, journal),
  ] : known;
  return {
    title: `What to do with ${lot.id}${lot.plant === undefined ? '' : ` ${lot.plant}`}, as of ${printMoment(now)}`,
    lead: seed ? [answerText(advice), seedText(advice)] : [seedText(advice)],
    passages: passages.filter(({ columns, items, texts }) => columns.length + items.length + texts.length > 0),
    notes: notesOf(advice),
  };
}

function own({ species, lot, now, untreated: shares, leftOut, aside, uncompared }: Advice): Passage {
  const isSilent = species.length + leftOut.length + aside.length + uncompared.length === 0 && shares.length > 0;
  return {
    heading: 'What your records say', columns: [],
    items: [
      ...species.flatMap(itemsOf),
      ...aside.map(asideItem),
      ...uncompared.map(({ batch, why }) => ({ title: batch.path, texts: [`Left out: ${why.undefined}.`] })),
      ...leftOut.map(({ batch, why }) => ({ title: batch.path, texts: [`Left out until you fix it: ${why.undefined}.`] })),
    ],
    texts: [
      ...species.flatMap(agent => orderTexts(agent, now.day)),
      ...isSilent ? [`No treatment of ${lot.plant ?? lot.id} has been compared with untreated seed.`] : [],
    ],
  };
}

/** Other forms of the species, or other species of the genus; a lot without a plant has neither. */
function kin(what: 'form' | 'species', of: string, tried: readonly TriedAgent[]): Passage {
  const others = what === 'form' ? 'forms' : what;
  return {
    heading: `Other ${others} of ${of} in your records`, columns: [],
    items: tried.flatMap(itemsOf), texts: tried.length > 0 ? [`Another ${what} may need something else.`] : [],
  };
}

function itemsOf({ agent, doses, together }: TriedAgent): Item[] {
  const all = together ? [{ title: `${agent.word}, all doses together`, texts: [together.sentence] }] : [];
  return [...doses.map(itemOf), ...all];
}

function asideItem(set: SetAside): Item {
  const { lot, contest: { treated } } = set;
  return { title: `${lot.id}: ${groupLabel(treated)}`, texts: [...asideTexts(set), lotsText([lot])] };
}

function asideTexts({ contest: { alsoDiffers, verdict: { sentence } }, because }: SetAside): string[] {
  switch (because) {
    case 'more differs': return [`Left out: ${differsInText(alsoDiffers)}.`];
    case 'no untreated seed': return ['Left out: no untreated seed of this lot can be compared with it.'];
    case 'not judged yet': return [sentence];
    case 'several agents': return [sentence, 'Left out of the advice: several agents or soaks together are a trial of none of them.'];
  }
}

function itemOf(tried: Tried): Item {
  const lots = [...new Set([...tried.lots, ...tried.harmedIn])];
  return { title: doseName(tried), texts: [tried.sentence, lotsText(lots)] };
}

/** Which dose did best and which worst, and how sure that is. */
function orderTexts({ agent, doses }: TriedAgent, today: Day): string[] {
  const known = doses.filter(({ soundGain }) => soundGain !== undefined);
  if (known.length < 2) return [];
  const [best, ...others] = known.toSorted((a, b) => b.soundGain! - a.soundGain!);
  const worst = others.at(-1)!;
  const notes = [...new Set(doses.flatMap(({ lots }) => lots))].flatMap(lot => trialOf(lot, today).ladders
    .filter(ladder => ladder.agent.word === agent.word)
    .map(ladder => `${lot.id}: ${ladderNote(ladder)}`));
  const order = best!.soundGain === worst.soundGain ? 'these doses gave equally many sound seedlings so far'
    : `${doseName(best!)} gave the most sound seedlings of these doses so far and ${doseName(worst)} the fewest`;
  return [`Compared with untreated seed, ${order}. The verdicts say what of that is more than chance.`, ...notes];
}

/** One row for each lot, or for each of the conditions that its untreated seed had. */
function untreated({ lot: own, now, untreated: shares, ready, readyPrepared, age, choice }: Advice): Passage {
  const column = (head: string, cell: (share: UntreatedShare) => string): Column => (
    { head, kind: 'text', cells: shares.map(cell) });
  const columns = shares.length === 0 ? [] : [
    column('Lot', ({ lot }) => recordName(lot.id, lot.definition.line)),
    column('Seed', untreatedText),
    column('Age when sown', share => {
      const old = ageOf(share);
      return old ? ageText(old) : '–';
    }),
    ...untreatedColumns(shares),
    ...deathsIn(shares).x === 0 ? [] : [column('Died', share => String(deathsIn([share]).x))],
  ];
  const isByReady = choice.kind === 'leave' && choice.because === 'ready';
  const ages = agesBeside(shares, own, now.day);
  return {
    heading: 'Untreated seed', columns, items: [],
    texts: [
      ...ready ? [`Fast enough by itself: ${readyText(ready)} ${lotsText([ready.lot])}`, ...choice.kind === 'leave' || choice.kind === 'treat' ? [] : [overallText(shares, now.day)]]
        : readyPrepared.length > 0 ? readyPrepared.map(preparedText)
          : shares.length > 0 && !isByReady ? ['None of it has germinated both well and soon (70 % of at least 10 seeds, half of them by day 30).'] : [],
      ...age && ages.length > 0 ? [asOldText(age, ages)] : [],
    ],
  };
}

function preparedText(record: ReadyRecord): string {
  const after = preparationText(record);
  const isRest = record.group.batches.some(({ conditions: { restOf } }) => restOf !== undefined);
  const rest = isRest ? ', as the rest of seed that had begun to germinate' : '';
  return `Well and soon${after === undefined ? '' : ` after ${after}`}${rest}: ${readyText(record)} ${lotsText([record.lot])}`;
}

/** Why one lot that did well does not decide. */
function overallText(shares: readonly UntreatedShare[], today: Day): string {
  const old = shares.filter(share => hadItsTime(share, today));
  const { x, n } = allOf(old);
  const leftOut = [
    ...shares.some(isWaiting) ? [WITHOUT_WAITING] : [],
    ...old.length < shares.length ? [`without seed of the last ${THRESHOLDS.readyDays.value} days`] : [],
  ];
  const without = leftOut.length === 0 ? '' : `, ${listed(leftOut, 'and')},`;
  return `Of all your untreated seed together${without} ${x} of ${n} germinated, so that lot alone does not decide.`;
}

const WITHOUT_WAITING = 'without seed that still waits in the cold';

function asOldText(age: Age, ages: ReturnType<typeof agesBeside>): string {
  const seed = `as old as this seed, which is ${ageText(age)}`;
  const rule = 'Ages within half a year count as the same (common practice, no source).';
  if (ages.every(({ asOld }) => asOld === 'no')) return `None of it was ${seed}. ${rule}`;
  if (ages.every(({ asOld }) => asOld === 'yes')) return `All of it was ${seed}. ${rule}`;
  if (ages.every(({ asOld }) => asOld === 'perhaps')) return `All of it may have been ${seed}. ${rule}`;
  const told = (wanted: AsOld) => ages.filter(({ asOld }) => asOld === wanted)
    .map(({ share: { lot, pooled: { x, n } } }) => `${x} of ${n} in ${lot.id}`).join(', ');
  const [sure, perhaps] = [told('yes'), told('perhaps')];
  const both = sure === '' ? `perhaps ${perhaps}` : perhaps === '' ? sure : `${sure}; perhaps also ${perhaps}`;
  return `${seed.charAt(0).toUpperCase()}${seed.slice(1)}: ${both}. ${rule}`;
}

function guides({ guides: all, choice, isBeyondGuides }: Advice): Passage {
  const offer = offerIn(choice);
  const beyond = isBeyondGuides && offer
    ? [`${offerName(offer)} is stronger than every guide here; it rests on your own records.`] : [];
  return {
    heading: 'What your guides say', columns: [], texts: beyond,
    items: all.map(({ plant, record, source, line }) => ({
      title: `${plant}: ${guideStepsText(record)}`,
      texts: [remarkText(line), `From ${recordName(source ?? 'a guide without a source', line)}.`].filter(text => text !== undefined),
    })),
  };
}

function division({ division: divided, choice }: Advice): Passage {
  const offer = offerIn(choice);
  const texts = divided && offer
    ? [...divisionTexts(divided, choice.kind === 'treat'), ...restTexts(divided), ...courseTexts(offer)] : [];
  return { heading: 'How to divide it', columns: [], items: [], texts };
}

function divisionTexts({ plan, share, isTooFew, sides, isEstimated, parts }: Division, isMost: boolean): string[] {
  if (isMost) {
    const kept = sides && sides.untreated < 4 && !parts ? 'Half of so few seeds stays untreated' : 'A quarter stays untreated, and at least four seeds';
    return [`${kept}: it shows whether the treatment still pays, and is there if it harms (common practice, no source).`];
  }
  if (!sides || !plan) return ['The number of seeds is unknown, so Plumule cannot say what a trial would show. Count them first if you can.'];
  const basis = share.own
    ? `${percent(share.value)} is how much of your untreated seed has germinated so far${share.leavesOut ? `, ${WITHOUT_WAITING}` : ''}.`
    : `${percent(share.value)} is assumed; your records have no untreated seed of this plant${share.leavesOut ? ' but what still waits in the cold' : ''}.`;
  const fewest = isEstimated ? ['This is for the least of the estimate.'] : [];
  if (isTooFew) {
    return ['With so few seeds even a great effect would hardly show. The untreated half is there if the treatment harms, and the numbers add up with those of other winters.', ...fewest];
  }
  const { best: { treated, untreated: rest }, inDishes } = plan;
  const dishes = inDishes && !isUndefined(inDishes.visible) && !parts
    ? [`Sown in ${inDishes.dishes} dishes a side, it also shows whether dishes differ; then ${Math.ceil(100 * inDishes.visible.value)} % of the treated seed must germinate.`] : [];
  const uneven = treated === plan.treated ? plan.sentence : `${treated} and ${rest} show the most. ${plan.sentence}`;
  return [`${uneven} ${basis}`, ...dishes, ...fewest, planBasis(plan).join(' ')].filter(text => text !== '');
}

function restTexts({ rest }: Division): string[] {
  return rest.length === 0 ? [] : [`What else is left, in ${listed(rest.map(({ path }) => path), 'and')}, stays as it is.`];
}

/** What belongs to the treatment beside the soak. */
function courseTexts(offer: Offer): string[] {
  const { next, isLate, beside, guide } = offer;
  const before = listed(stepsBefore(offer), 'and');
  const after = listed(next.map(stageName), 'and');
  const [puts, goes] = guide ? ['Your guide puts', 'Your guide goes'] : ['Your records put', 'Your records go'];
  return [
    ...before !== '' ? [`${puts} the soak after ${before}. Give that to both parts first, and begin the soak then.`] : [],
    ...isLate ? ['The seed that it paid on had been sown and watched before the soak, so no soak is offered for today.'] : [],
    ...next.length > 0 ? [`${goes} on with ${after}. Give that to both parts alike.`] : [],
    ...beside.length > 0 ? [`The guide gives ${listed(beside, 'and')} as well. Try one of them at a time: together they would not show which of them worked.`] : [],
  ];
}

function records(advice: Advice, journal: Journal): Passage {
  const found = advisedRecords(advice, journal);
  const heading = 'Records to write';
  if (!found) return { heading, columns: [], items: [], texts: [] };
  const { split, reminders, soaks } = found;
  const now = [...split === undefined ? [] : [split], ...soaks.length > 0 ? soaks.map(({ line }) => line) : reminders];
  return { heading, columns: [], items: now.map(title => ({ title, texts: [] })), texts: [] };
}

function notesOf({ choice, supplies }: Advice): string[] {
  const offer = offerIn(choice);
  const works: readonly BenchWork[] = [
    'soak', ...offer?.ppm === undefined ? ['unmeasured' as const] : [],
    ...supplies?.bottles.length === 0 ? ['powder' as const] : [],
  ];
  return [
    ...offer ? [cautionsFor(works, [offer.agent]).map(({ text }) => text).join(' ')] : [],
    'This rests on your records and guides alone. Verdicts follow the rules in the format reference.',
  ];
}
