/** What stands around everything that a webview shows. */
export interface Page {
  readonly title: string;
  /** The address of our own style. */
  readonly style: string;
  /** Where the editor keeps the files of the extension, in the words of a content security policy. */
  readonly source: string;
  /** What may be loaded beside that style, in the same words. */
  readonly also: readonly string[];
  /** The element of the body, with what is in it. */
  readonly body: string;
}

/** Nothing is run or loaded but our own style, and what is named. */
export function pageOf({ title, style, source, also, body }: Page): string {
  const policy = ["default-src 'none'", `style-src ${source}`, ...also, "base-uri 'none'", "form-action 'none'"].join('; ');
  return `<!DOCTYPE html>
<html lang="en"><head><meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}</title><link rel="stylesheet" href="${style}"></head>
${body}</html>`;
}
