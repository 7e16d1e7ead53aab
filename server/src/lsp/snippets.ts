/** From a template to the protocol's snippet syntax. */
import type { Blank, Template } from '../features/completion/template.ts';

/**
 * The template as a snippet: blanks are tab stops in their order, those of one name the same.
 *
 * Example: ['at ', { blank: 'bag 3', choices: ['bag 3', 'bag 4'] }] is 'at ${1|bag 3,bag 4|}'
 */
export function snippetOf(template: Template): string {
  const names = new Map<string, number>();
  let stops = 0;
  return template.map(part => {
    if (typeof part === 'string') return part.replace(/[\\$}]/g, String.raw`\$&`);
    const known = part.name === undefined ? undefined : names.get(part.name);
    if (known !== undefined) return `$${known}`;
    stops++;
    if (part.name !== undefined) names.set(part.name, stops);
    return stopOf(stops, part);
  }).join('');
}

function stopOf(number: number, { blank, choices }: Blank): string {
  if (choices) return `\${${number}|${choices.map(each => each.replace(/[\\|,]/g, String.raw`\$&`)).join(',')}|}`;
  if (blank === '') return `$${number}`;
  return `\${${number}:${blank.replace(/[\\$}]/g, String.raw`\$&`)}}`;
}
