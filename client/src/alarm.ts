/**
 * Rings before and at the end of a soak while the editor is open, says what ended while it was closed, and rings again
 * until somebody answers.
 */
import { window, workspace, type ExtensionContext } from 'vscode';
import type { SoakShown } from '../../server/src/lsp/calendar-shapes.ts';
import { afterAnswer, afterRings, ringsAt, stillRung, type Ring, type Rung } from './alarm-times.ts';
import type { JournalServer } from './server.ts';
import { writeRecord } from './writing.ts';

const MINUTE = 60_000;
const TICK = 10_000;
/** A minute or two over the limit is no matter. */
const TOLERATED = 2 * MINUTE;
const KEPT = 'plumule.alarm.rung';

export class SoakAlarm {
  readonly #server: JournalServer;
  readonly #kept: ExtensionContext['workspaceState'];
  readonly #sound: (uri: string) => void;
  readonly #timer: ReturnType<typeof setInterval>;
  #soaks: readonly SoakShown[] = [];
  /** How often each soak has rung: the editor closes a message when it is shown anew, and that is no answer. */
  readonly #shown = new Map<string, number>();

  /** `sound` plays one, beside the journal that a soak is in. */
  constructor(server: JournalServer, kept: ExtensionContext['workspaceState'], sound: (uri: string) => void) {
    this.#server = server;
    this.#sound = sound;
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
    const now = Date.now();
    const rung = stillRung(now, this.#kept.get<Rung>(KEPT, {}), this.#soaks, lead);
    const rings = ringsAt(now, this.#soaks, rung, lead);
    const againMinutes = settings.get<number>('againMinutes', 15);
    const next = afterRings(now, rung, rings, this.#soaks, againMinutes * MINUTE);
    if (JSON.stringify(next) !== JSON.stringify(rung)) {
      // Remembered before anything is shown: a reload in between must not ring twice. Where it cannot be, better twice
      // than never.
      await this.#kept.update(KEPT, next).then(undefined, () => undefined);
    }
    for (const ring of rings) void this.#show(ring, againMinutes);
    if (rings[0] && settings.get<boolean>('sound', false)) this.#sound(rings[0].soak.at.uri);
  }

  async #show(ring: Ring<SoakShown>, againMinutes: number): Promise<void> {
    const { soak, over } = ring;
    const turn = (this.#shown.get(soak.key) ?? 0) + 1;
    this.#shown.set(soak.key, turn);
    const again = `Remind me in ${againMinutes} min`;
    // The editor takes a warning away after some seconds; an error stays until it is answered.
    const say = over ? window.showErrorMessage : window.showWarningMessage;
    const choice = await say(messageOf(ring), 'Lift now', again);
    if (this.#shown.get(soak.key) !== turn) return;
    const rungAgain = choice === again ? Date.now() + againMinutes * MINUTE : undefined;
    await this.#kept.update(KEPT, afterAnswer(this.#kept.get<Rung>(KEPT, {}), soak.key, rungAgain));
    if (choice !== 'Lift now') return;
    const written = await this.#server.lift(soak.batch, soak.at.uri);
    if (!written || !await writeRecord(written)) {
      void window.showErrorMessage(`Plumule could not write the lift. Write it yourself: lift ${soak.batch}`);
    }
  }
}

function messageOf({ soak, kind, over, missed }: Ring<SoakShown>): string {
  const { batch, plant, place, endText, limit, limitText } = soak;
  const name = `${batch}${plant ? ` (${plant})` : ''}${place ? `, at ${place},` : ''}`;
  if (!over) return `The soak of ${name} ends at ${endText}.`;
  const overLimit = limit !== undefined && Date.now() > limit + TOLERATED ? ` It passed the limit at ${limitText}.` : '';
  if (missed) return `The soak of ${name} ended at ${endText}, while the editor was closed.${overLimit}`;
  return kind === 'end' ? `The soak of ${name} ends now (${endText}).${overLimit}`
    : `The soak of ${name} ended at ${endText}.${overLimit}`;
}
