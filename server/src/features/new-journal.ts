/** What a new journal begins with, and the name of its file. */
import { isoOf, type Day } from '../model/day.ts';
import { isSouthern } from '../model/southern.ts';
import { winterOf } from '../model/winter.ts';

export interface NewJournal {
  /** Example: '2026-27.germ', or '2026.germ' south of the equator */
  readonly file: string;
  /** The heading of its winter. */
  readonly head: string;
  /** The first lot, to be filled in, as a snippet of the editor; it ends below the `day` line of today. */
  readonly lot: string;
}

/** `zone` tells the half of the earth; the first file of a journal also says what holds for the journal as a whole. */
export function newJournal(today: Day, zone: string | undefined, isFirst: boolean): NewJournal {
  const winter = winterOf(today, zone);
  const settings = isFirst && zone !== undefined ? `zone ${zone}\nlimit soak, 24 h\nlimit GA3, 1000 ppm\n` : '';
  return {
    file: `${winter.replace('/', '-')}.germ`,
    head: `# Winter ${winter}\n${settings}\n`,
    lot: `lot \${1:LOT-1} \${2:Genus species}, \${3:60} seeds, collected \${4:${lastAutumn(today, zone)}}
split $1, A \${5:24} seeds, B \${6:24} seeds

day ${isoOf(today)}
$0`,
  };
}

/** The month of the last harvest. Example: '2025-09' in the spring of 2026, north of the equator */
function lastAutumn(today: Day, zone: string | undefined): string {
  const [year, month] = isoOf(today).split('-').map(Number);
  const autumn = isSouthern(zone) ? 3 : 9;
  return `${month! < autumn ? year! - 1 : year!}-0${autumn}`;
}
