/** Rings before and at the end of a soak while the editor is open, and says what ended while it was closed. */
import { window, workspace, type ExtensionContext } from 'vscode';
import type { SoakShown } from '../../server/src/lsp/calendar-shapes.ts';
import { afterRings, ringsAt, type Ring, type Rung } from './alarm-times.ts';
import type { JournalServer } from './server.ts';
import { writeRecord } from './writing.ts';

const MINUTE = 60_000;
const TICK = 10_000;
const KEPT = 'plumule.alarm.rung';

export class SoakAlarm {
  readonly #server: JournalServer;
  readonly #kept: ExtensionContext['workspaceState'];
  readonly #timer: ReturnType<typeof setInterval>;
  #soaks: readonly SoakShown[] = [];

  constructor(server: JournalServer, kept: ExtensionContext['workspaceState']) {
    this.#server = server;
    this.#kept = kept;
    this.#timer = setInterval(() => void this.#ring(), TICK);
  }

  follow(soaks: readonly SoakShown[]): void {
    this.#soaks = soaks;
    void this.#ring();
  }

  dispose(): void {
    clearInterval(this.#timer);
  }

  async #ring(): Promise<void> {
    const settings = workspace.getConfiguration('plumule.alarm');
    // Who looks at the journal as of another day would be told of soaks that were lifted long ago.
    const isToday = workspace.getConfiguration('plumule').get<string>('asOf', '') === '';
    if (!settings.get<boolean>('enabled', true) || !isToday) return;
    const lead = settings.get<number>('minutesBefore', 15) * MINUTE;
    const rung = this.#kept.get<Rung>(KEPT, {});
    const rings = ringsAt(Date.now(), this.#soaks, rung, lead);
    const next = afterRings(rung, rings, this.#soaks);
    if (JSON.stringify(next) !== JSON.stringify(rung)) {
      // Remembered before anything is shown: a reload in between must not ring twice. Where it cannot be, better twice
      // than never.
      await this.#kept.update(KEPT, next).then(undefined, () => undefined);
    }
    for (const ring of rings) void this.#show(ring, settings.get<number>('againMinutes', 15));
  }

  async #show(ring: Ring<SoakShown>, againMinutes: number): Promise<void> {
    const { soak } = ring;
    const again = `Remind me in ${againMinutes} min`;
    const choice = await window.showWarningMessage(messageOf(ring), 'Lift now', again);
    if (choice === again) {
      const rung = this.#kept.get<Rung>(KEPT, {});
      const past = { ...rung[soak.key], again: Date.now() + againMinutes * MINUTE };
      await this.#kept.update(KEPT, { ...rung, [soak.key]: past });
    } else if (choice === 'Lift now') {
      const written = await this.#server.lift(soak.batch, soak.at.uri);
      if (!written || !await writeRecord(written)) {
        void window.showErrorMessage(`Plumule could not write the lift. Write it yourself: lift ${soak.batch}`);
      }
    }
  }
}

function messageOf({ soak: { batch, plant, endText, limit, limitText }, over, missed }: Ring<SoakShown>): string {
  const name = plant ? `${batch} (${plant})` : batch;
  if (!over) return `The soak of ${name} ends at ${endText}.`;
  const overLimit = limit !== undefined && Date.now() > limit ? ` It is over the limit since ${limitText}.` : '';
  return missed
    ? `The soak of ${name} ended at ${endText}, while the editor was closed.${overLimit}`
    : `The soak of ${name} has ended (${endText}).${overLimit}`;
}
