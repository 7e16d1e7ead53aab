import { keywords, type Keyword } from '../../model/keywords.ts';

/**
 * A command of the shell that prints the ids of the journals here and one folder below, one a line: those of lots, or
 * those of batches as well. It reads what is written, which takes no time, and leaves out ids that are not
 * plain letters and digits: a shell would run, or a terminal obey, what a journal may hold.
 */
export function idCommand(kind: 'lots' | 'batches'): string {
  const ofBatches = (Object.keys(keywords) as Keyword[]).filter(keyword => keywords[keyword].subject === 'batch');
  const naming = kind === 'lots' ? ['lot'] : ['lot', ...ofBatches];
  return `awk '$1 ~ /^(${naming.join('|')})$/ { id = $2; sub(/[,:]$/, "", id); ` +
    'if (id ~ /^[A-Za-z0-9][A-Za-z0-9._+\\/-]*$/ && !seen[id]++) print id }\' ' +
    '/dev/null $(find . -maxdepth 2 -name "*.germ" -type f ! -name "* *" 2>/dev/null)';
}
