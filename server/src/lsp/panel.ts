/** The request behind the panel of pictures: what it shows now. The server keeps nothing of the panel. */
import type { Connection } from './protocol.ts';
import { lotAt } from '../features/lot-at.ts';
import { panelColours } from '../report/panel/colours.ts';
import { panelPage } from '../report/panel/panel.ts';
import { ownRequests } from './own-requests.ts';
import { filledRooms } from './room-names.ts';
import type { Service } from './service.ts';

export interface PanelShown {
  readonly title: string;
  /** What stands in the panel. Marks bear `data-way`: the number of a line, a blank, the address of its file. */
  readonly html: string;
  /** Named by their place here in elements of the page, as `data-photo`. Where they lead is for the client to see. */
  readonly photos: readonly PhotoNamed[];
  /** Rules of CSS that give the pictures the colours of the editor. */
  readonly colours: string;
  /** The lot that is shown, or would be in its view; null where there is none. */
  readonly lot: string | null;
}

export interface PhotoNamed {
  /** The address of the file that names it. */
  readonly uri: string;
  /** From there, with `/`, as written: it may lead anywhere. Null for an address, and for a path from a root. */
  readonly path: string | null;
}

/** Pixels: what a picture can be drawn on, whatever is asked for. */
const WIDTH = { least: 320, most: 1200 };
const HEIGHT = { least: 300, most: 3000 };

const NOTHING: PanelShown = { title: 'Pictures', html: '<p>There is no journal here yet.</p>', photos: [], colours: '', lot: null };

export function servePanel(connection: Connection, service: Service): void {
  const request = ownRequests(connection, service);

  request('panel', NOTHING, ({ uri, position, lot: before, view = 'lot', width, height }): PanelShown => {
    service.check();
    const found = uri === undefined ? undefined : service.find(uri);
    const room = found?.room ?? filledRooms(service)[0];
    if (!room) return NOTHING;
    const at = found && position ? lotAt(found.room.journal, found.file, position.line) : undefined;
    const id = at ?? before;
    const lot = id === undefined ? undefined : room.journal.lot(id);
    const page = panelPage(room.journal, room.book, service.now(room), {
      view, lot, width: between(width, WIDTH), height: between(height, HEIGHT),
      wayTo: ({ number, store: { name } }) => `${number} ${service.uriOf(name)}`,
    });
    const photos = page.photos.map(({ path, line }) => ({ uri: service.uriOf(line.store.name), path: path ?? null }));
    return { ...page, photos, colours: panelColours(), lot: lot?.id ?? null };
  });
}

function between(pixels: number | undefined, { least, most }: { least: number; most: number }): number {
  return Math.max(least, Math.min(most, pixels ?? least));
}
