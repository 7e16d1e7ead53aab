/**
 * Rings before and at the end of a soak while the editor is open, says what ended while it was closed, and rings again
 * until somebody answers.
 */
import { window, workspace, type ExtensionContext } from 'vscode';
import type { SoakShown } from '../../server/src/lsp/calendar-shapes.ts';
import { afterAnswer, afterRings, ringsAt, stillRung, together, type Ring, type Rung } from './alarm-times.ts';
import { messageOf } from './alarm-words.ts';
import type { JournalServer } from './server.ts';
import { writeRecord } from './writing.ts';

const MINUTE = 60_000;
const TICK = 10_000;
const KEPT = 'plumule.alarm.rung';

export class SoakAlarm {
  readonly #server: JournalServer;
  readonly #kept: ExtensionContext['workspaceState'];
  readonly #sound: (uri: string) => void;
  readonly #timer: ReturnType<typeof setInterval>;
  #soaks: readonly SoakShown[] = [];
  /** The last message of each soak: the editor closes one when it is shown anew, and that is no answer. */
  readonly #shown = new Map<string, symbol>();

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
    for (const alike of together(rings)) void this.#show(alike, againMinutes);
    if (rings[0] && settings.get<boolean>('sound', false)) this.#sound(rings[0].soak.at.uri);
  }

  async #show(rings: readonly Ring<SoakShown>[], againMinutes: number): Promise<void> {
    const turn = Symbol('turn');
    for (const { soak } of rings) this.#shown.set(soak.key, turn);
    const again = `Remind me in ${againMinutes} min`;
    const lift = rings.length > 1 ? 'Lift all now' : 'Lift now';
    // The editor takes a warning away after some seconds; an error stays until it is answered.
    const say = rings[0]?.over ? window.showErrorMessage : window.showWarningMessage;
    const choice = await say(messageOf(rings, Date.now()), lift, again);
    const soaks = rings.map(({ soak }) => soak).filter(({ key }) => this.#shown.get(key) === turn);
    if (soaks.length === 0) return;
    const rungAgain = choice === again ? Date.now() + againMinutes * MINUTE : undefined;
    const rung = soaks.reduce<Rung>((all, { key }) => afterAnswer(all, key, rungAgain), this.#kept.get<Rung>(KEPT, {}));
    await this.#kept.update(KEPT, rung);
    if (choice === lift) await this.#lift(soaks.filter(({ key }) => this.#soaks.some(running => running.key === key)));
  }

  /** Those that still run: a message stays after its seed was lifted by hand. */
  async #lift(soaks: readonly SoakShown[]): Promise<void> {
    const [first] = soaks;
    if (!first) return;
    const batches = soaks.map(({ batch }) => batch);
    const written = await this.#server.lift(batches, first.at.uri);
    if (!written || !await writeRecord(written)) {
      const records = batches.map(batch => `lift ${batch}`).join(', ');
      void window.showErrorMessage(`Plumule could not write this. Write it yourself: ${records}`);
    }
  }
}
