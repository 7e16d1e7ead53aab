/** What a text is written on: how wide it is, and how it shows a heading. */
export interface Page {
  /** Characters; lines are no wider where the words of the journal allow it. */
  readonly width: number;
  readonly bold: (text: string) => string;
  /** It shows block characters, so that courses can be drawn. */
  readonly blocks: boolean;
}

/** Paper, a file, a pipe: what is no terminal. */
export const plainPage: Page = { width: 100, bold: text => text, blocks: false };
