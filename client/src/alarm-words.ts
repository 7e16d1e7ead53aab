/** What an alarm says: apart from the editor. */
import type { SoakShown } from '../../server/src/lsp/calendar-shapes.ts';
import type { Ring } from './alarm-times.ts';
import { counted } from './views/brief.ts';

/** A minute or two over the limit is no matter. */
const TOLERATED = 2 * 60_000;

/** `rings`: of soaks that end at one time, which ring alike. `now`: in ms since 1970-01-01T00:00Z. */
export function messageOf(rings: readonly Ring<SoakShown>[], now: number): string {
  const [{ kind, over, missed, soak }] = rings as [Ring<SoakShown>];
  const { endText } = soak;
  const soaks = rings.map(ring => ring.soak);
  const limits = limitsText(soaks, now);
  if (soaks.length > 1) {
    const all = counted(soaks.length, 'soak');
    const names = soaks.map(({ batch, place }) => (place ? `${batch} at ${place}` : batch)).join(', ');
    if (!over) return `${all} end at ${endText}: ${names}.`;
    if (missed) return `${all} ended at ${endText}, while the editor was closed: ${names}.${limits}`;
    return kind === 'end' ? `${all} end now (${endText}): ${names}.${limits}` : `${all} ended at ${endText}: ${names}.${limits}`;
  }
  const { batch, plant, place } = soak;
  const name = `${batch}${plant ? ` (${plant})` : ''}${place ? `, at ${place},` : ''}`;
  if (!over) return `The soak of ${name} ends at ${endText}.`;
  if (missed) return `The soak of ${name} ended at ${endText}, while the editor was closed.${limits}`;
  return kind === 'end' ? `The soak of ${name} ends now (${endText}).${limits}`
    : `The soak of ${name} ended at ${endText}.${limits}`;
}

/** A sentence for each limit that some have passed: it differs from plant to plant. */
function limitsText(soaks: readonly SoakShown[], now: number): string {
  const late = soaks.filter(({ limit }) => limit !== undefined && now > limit + TOLERATED);
  return [...new Set(late.map(({ limitText }) => limitText))].map(limitText => {
    const own = late.filter(soak => soak.limitText === limitText);
    const who = own.length < soaks.length ? own.map(({ batch }) => batch).join(', ') : soaks.length > 1 ? 'They' : 'It';
    return ` ${who} passed the limit at ${limitText}.`;
  }).join('');
}
