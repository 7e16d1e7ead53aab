/** The page of the panel before anything is in it. */
import { pageOf } from '../page.ts';

interface PanelPlaces {
  readonly view: string;
  readonly nonce: string;
  readonly source: string;
  readonly script: string;
  readonly style: string;
}

/** Our own script runs there, and pictures of the open folders are shown. */
export function panelHtml({ view: first, nonce, source, script, style }: PanelPlaces): string {
  const tabs = ['lot', 'plant', 'season', 'places']
    .map(view => `<button type="button" role="tab" data-view="${view}" aria-controls="shown">${view[0]!.toUpperCase()}${view.slice(1)}</button>`);
  return pageOf({
    title: 'Pictures', style, source, also: [`img-src ${source}`, `script-src 'nonce-${nonce}'`],
    body: `<body data-view="${first}"><div role="tablist" aria-label="What to show">${tabs.join('')}</div>
<main id="shown" role="tabpanel"></main><p id="said"></p>
<script nonce="${nonce}" src="${script}"></script></body>`,
  });
}
