import type { JournalLine } from './journal-file.ts';

const none: readonly string[] = [];
const NAME = /\p{L}[\p{L}\p{M}\p{N}._-]*(?:\/[\p{L}\p{N}][\p{L}\p{M}\p{N}._-]*)*/gu;

/** Whatever in a line that could not be read may be the name of a lot or a batch; of any other line nothing. */
export function namesInUnread({ text, content: { kind, record } }: JournalLine): readonly string[] {
  // A record that begins with its date is read as the line of a day.
  if (kind !== 'unread' && !(record?.keyword === 'day' && record.broken)) return none;
  return (text.match(NAME) ?? []).map(name => name.replace(/[._-]+$/u, ''));
}
