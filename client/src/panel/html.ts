/** The page of the panel before anything is in it. */

interface PanelPlaces {
  readonly view: string;
  readonly nonce: string;
  /** Where the editor keeps the files of the extension, in the words of a content security policy. */
  readonly source: string;
  readonly script: string;
  readonly style: string;
}

/** Nothing but our own script and style, and pictures of the open folders, is run or loaded. */
export function panelHtml({ view: first, nonce, source, script, style }: PanelPlaces): string {
  const policy = `default-src 'none'; style-src ${source}; img-src ${source}; script-src 'nonce-${nonce}'; `
    + "base-uri 'none'; form-action 'none'";
  const tabs = ['lot', 'plant', 'season', 'places']
    .map(view => `<button type="button" role="tab" data-view="${view}" aria-controls="shown">${view[0]!.toUpperCase()}${view.slice(1)}</button>`);
  return `<!DOCTYPE html>
<html lang="en"><head><meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Pictures</title><link rel="stylesheet" href="${style}"></head>
<body data-view="${first}"><div role="tablist" aria-label="What to show">${tabs.join('')}</div>
<main id="shown" role="tabpanel"></main><p id="said"></p>
<script nonce="${nonce}" src="${script}"></script></body></html>`;
}
