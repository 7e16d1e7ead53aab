/** Which packet took the place of which, in words. */
import type { Replacing } from '../journal/replacing.ts';
import { listed } from '../syntax/nearest.ts';

/** Example: ['replaces GEN-22 and GEN-23', 'replaced by GEN-26'] */
export function replacingTexts({ replaces, replacedBy }: Replacing): string[] {
  return [
    ...(replaces.length > 0 ? [`replaces ${listed(replaces, 'and')}`] : []),
    ...(replacedBy.length > 0 ? [`replaced by ${listed(replacedBy, 'and')}`] : []),
  ];
}
