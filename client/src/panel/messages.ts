/** What the panel and its page (client/media/page.js) say to each other. */
import type { PanelView } from '../../../server/src/report/panel/panel.ts';

/** What is shown: kept by the page, so that it survives a reload of the window. */
export interface PanelState {
  readonly view: PanelView;
  /** A file of the journal. */
  readonly uri?: string | undefined;
  readonly lot?: string | undefined;
}

export type FromPage =
  /** The page is there, has another size, or was asked for another view. */
  | { readonly type: 'show'; readonly view: PanelView; readonly width: number; readonly height: number }
  /** To the record of a mark. */
  | { readonly type: 'go'; readonly way: string };

/** Sent while the page is in sight: it is to be heard. */
export interface RingPage {
  readonly ring: true;
}

export interface ToPage {
  readonly state: PanelState;
  readonly html: string;
  /** Where the page loads each photo from; null for one that is not to be shown. */
  readonly photos: readonly (string | null)[];
  readonly colours: string;
}
