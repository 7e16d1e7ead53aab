/** What a batch takes along when it is split off: all that was done to the seed, not what was counted. */
import type { BatchDraft, Draft } from './batches.ts';
import type { BatchEvent, Soak, Stage } from './life.ts';

/** `sown`: the seeds given out had been sown. */
export function inherit(child: BatchDraft, parent: BatchDraft, sown: boolean): void {
  const { soaks, stages, soaking } = parent;
  // From here on a soak and a stage that go on have ends of their own in each batch.
  const ownSoaks = new Map<Soak, Draft<Soak>>(soaks.map(soak => [soak, soak === soaking ? { ...soak } : soak]));
  const ownStages = new Map<Stage, Draft<Stage>>(stages.map(stage => [stage, stage.end ? stage : { ...stage }]));
  const ownEvent = (event: BatchEvent): BatchEvent => {
    if (event.type === 'soak') return { ...event, soak: ownSoaks.get(event.soak) ?? event.soak };
    return event.type === 'stage' ? { ...event, stage: ownStages.get(event.stage) ?? event.stage } : event;
  };
  child.inherited = [...parent.inherited, ...parent.handedOn].map(ownEvent);
  // What is dated before the batch was split off is an oversight; what it inherits was over by then.
  // A `split` without a date comes before everything and ends nothing.
  const first = child.events.find(({ entry }) => Number.isFinite(entry.moment.day));
  const isNew = first === undefined;
  for (const stage of ownStages.values()) if (first && !stage.end) stage.end = first.entry.moment;
  child.soaks.unshift(...ownSoaks.values());
  child.stages.unshift(...ownStages.values());
  if (isNew && soaking) child.soaking = ownSoaks.get(soaking);
  child.treated ||= parent.treated;
  child.medium ??= parent.medium;
  if (sown && !child.sowing) {
    child.sowing = parent.sowing;
    child.sown = child.seeds;
  }
}
