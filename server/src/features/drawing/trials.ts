/** A ladder of doses, and what the lots of a plant say together, as values of pictures. */
import type { JournalLine } from '../../journal/journal-file.ts';
import { germinated, shareOf } from '../../measures/contrast.ts';
import { finalTotal, seedsCounted } from '../../measures/course.ts';
import { isUndefined } from '../../measures/measured.ts';
import { wilson } from '../../measures/proportion.ts';
import { WEAK } from '../../measures/weak.ts';
import { differencesPicture, type DifferenceRow } from '../../pictures/differences.ts';
import { ladderPicture, type Step } from '../../pictures/ladder.ts';
import type { Frame, Picture } from '../../pictures/picture.ts';
import { usualUnit } from '../../solutions/strength.ts';
import { coursesOf, type Group } from '../../trials/groups.ts';
import type { DoseLadder } from '../../trials/ladders.ts';
import { isByEye } from '../../trials/treatment.ts';
import type { AgentAcross, PlantTrial } from '../../trials/plant-trial.ts';
import { winterOf } from '../../model/winter.ts';
import { ladderNote } from '../../words/ladders.ts';
import { agentText, groupLabel } from '../../words/trials.ts';

export function doseLadderPicture(ladder: DoseLadder, lot: string, frame: Frame): Picture | undefined {
  const { agent, untreated, rungs, ladder: { doses } } = ladder;
  const unit = usualUnit(agent, doses.at(-1)!.dose);
  return ladderPicture({
    unit, title: `${agent.word} by dose in ${lot}`, caption: ladderNote(ladder), untreated: stepOf(untreated, ''),
    rungs: rungs.map(({ treated, verdict }, i) => ({
      ...stepOf(treated, verdict.verdict), isAbout: isByEye(treated),
      dose: unit === '%' ? doses[i]!.dose / 10_000 : doses[i]!.dose,
      line: soakOf(treated),
    })),
  }, frame);
}

/** The record of the soak that gave a rung its dose, of the first of its batches. */
function soakOf({ batches }: Group): JournalLine | undefined {
  return batches[0]?.batch.soaks.find(({ doses }) => doses.length > 0)?.entry.line;
}

function stepOf(group: Group, verdict: string): Step {
  const courses = coursesOf(group);
  const { x, n } = shareOf(courses, germinated, seedsCounted);
  const harm = [...WEAK, 'rotted' as const].flatMap(what => {
    const number = courses.reduce((sum, course) => sum + finalTotal(course, what), 0);
    return number > 0 ? [`${what} ${number}`] : [];
  });
  return { label: groupLabel(group), germinated: x, seeds: n, ...wilson(x, n), harm: harm.join(', '), verdict };
}

/** Every agent that was tried on a plant, winter below winter, and what the lots say together. */
export function plantPicture({ plant, agents }: PlantTrial, frame: Frame): Picture | undefined {
  return differencesPicture({
    title: `Treated less untreated: ${plant}`,
    caption: agents.filter(({ across }) => across.lots > 1)
      .map(agent => `${agentText(agent)}: ${agent.across.sentence}`).join(' '),
    rows: agents.flatMap(agent => rowsOf(agent, agents.length > 1)),
  }, frame);
}

function rowsOf(agentAcross: AgentAcross, isNamed: boolean): DifferenceRow[] {
  const { agent, strata, across: { comparisons, lots, difference } } = agentAcross;
  const rows = strata.map(({ lot, pairs }, i): DifferenceRow & { readonly winter: string } => {
    const comparison = comparisons[i]!;
    const winter = winterOf(pairs[0]!.untreated.batches[0]!.conditions.dayZero, lot.zone);
    const label = [winter, lot.id, ...isNamed ? [agent.word] : []].join(' ');
    const base = { winter, label, isTogether: false, line: lot.definition.line };
    if (isUndefined(comparison)) return { ...base, difference: undefined, counts: comparison.undefined };
    const { treated, untreated, difference: found } = comparison.germinated;
    const counts = `${treated.x} of ${treated.n} treated, ${untreated.x} of ${untreated.n} untreated`;
    return { ...base, difference: found, counts };
  }).sort((a, b) => (a.winter < b.winter ? -1 : a.winter > b.winter ? 1 : 0));
  if (lots < 2 || isUndefined(difference)) return rows;
  const label = `${lots} lots together${isNamed ? `, ${agent.word}` : ''}`;
  return [...rows, { label, difference, counts: '', isTogether: true }];
}
