/** What the exit code of the command line says. */
export const exits = {
  clean: 0,
  /** `check` found errors or warnings. */
  problems: 1,
  /** Something given could not be understood or read; the rest was still worked on. */
  unread: 2,
} as const;

export type Exit = (typeof exits)[keyof typeof exits];
