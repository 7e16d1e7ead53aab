/** Facts that say something together with their record: the length of a soak or a stage, a temperature, a place. */
import { tellsMore, type Entry } from '../../journal/life.ts';
import { celsius, type Temperature } from '../../model/quantity.ts';
import type { Fact } from '../../model/record.ts';
import { lifeOf } from '../events.ts';
import { hoverDrops } from './apply.ts';
import { hoverJudge } from './judge.ts';
import { hoverPlace } from './place.ts';
import type { HoverContext } from './section.ts';
import { hoverSoak } from './soak.ts';
import { hoverSplit } from './split.ts';
import { hoverStage } from './stage.ts';

const shownWithEvent: ReadonlySet<Fact['type']> = new Set(['duration', 'seedlings', 'drops', 'part']);

export function hoverFact(fact: Fact, entry: Entry, context: HoverContext): string | undefined {
  if (fact.type === 'temperature') return temperatureText(fact.value);
  if (fact.type === 'at') return hoverPlace(fact.value.text, context);
  return shownWithEvent.has(fact.type) ? hoverEvent(entry, context) : undefined;
}

/** What the record of a soak, its `lift`, a stage or drops did, and what a split can show; undefined for any other. */
export function hoverEvent(entry: Entry, context: HoverContext): string | undefined {
  if (entry.record.keyword === 'split') return hoverSplit(entry, context);
  const lived = lifeOf(context.journal, entry);
  if (!lived?.event) return undefined;
  const { lot, batch, event } = lived;
  if (event.type === 'judge') return hoverJudge(event, lot, batch, context);
  if (!tellsMore(event)) return undefined;
  switch (event.type) {
    case 'soak': case 'lift': return event.soak && hoverSoak({ soak: event.soak, batch, lot }, context);
    case 'stage': return hoverStage(event.stage, batch, context);
    case 'apply': return hoverDrops({ event, batch, lot }, context);
    case 'split': case 'sow': case 'count': case 'cut': case 'leave': case 'gone': return undefined;
    default: return event satisfies never;
  }
}

/** Degrees in the other unit, to one decimal place. */
function temperatureText({ day, night, unit }: Temperature): string {
  const other = unit === 'C' ? 'F' : 'C';
  const round = (value: number) => Math.round(value * 10) / 10;
  const convert = (value: number) => round(unit === 'F' ? celsius(value, 'F') : (value * 9) / 5 + 32);
  return night === undefined
    ? `${day} °${unit} = ${convert(day)} °${other}`
    : `${day} °${unit} by day, ${night} °${unit} by night = ${convert(day)} and ${convert(night)} °${other}`;
}
