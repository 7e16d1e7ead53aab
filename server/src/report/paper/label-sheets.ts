/** Sheets of labels: where each label is on the paper. */

/** Lengths in mm. */
export interface LabelSheet {
  readonly paper: 'A4' | 'letter';
  readonly columns: number;
  readonly rows: number;
  readonly width: number;
  readonly height: number;
  readonly top: number;
  readonly left: number;
  /** Between two columns. */
  readonly gap: number;
  /** Lines to cut along: the labels are not cut yet. */
  readonly lines: boolean;
}

/** The two common sheets of stickers, and plain paper of both sizes. */
export const labelSheets = {
  'a4-3x8': { paper: 'A4', columns: 3, rows: 8, width: 70, height: 37, top: 0.5, left: 0, gap: 0, lines: false },
  'letter-3x10': { paper: 'letter', columns: 3, rows: 10, width: 66.7, height: 25.4, top: 12.7, left: 4.8, gap: 3.1, lines: false },
  'a4-cut': { paper: 'A4', columns: 3, rows: 8, width: 63, height: 34, top: 12, left: 10, gap: 0, lines: true },
  'letter-cut': { paper: 'letter', columns: 3, rows: 8, width: 64, height: 31, top: 12, left: 12, gap: 0, lines: true },
} as const satisfies Readonly<Record<string, LabelSheet>>;
export type LabelSheetName = keyof typeof labelSheets;
