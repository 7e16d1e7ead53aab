import pc from 'picocolors';
import type { Severity } from '../model/problems.ts';
import type { ListedProblem, Spot } from './listed.ts';
import { printable } from '../report/printable.ts';

/**
 * One line a problem, `file:line:column: severity code: message`, and below it, indented, the places it speaks of.
 *
 * Example: `2026.germ:4:21: warning soak-too-long: ...`
 */
export function checkText(problems: readonly ListedProblem[], colours: boolean): string {
  const { bold, red, yellow, cyan, dim } = pc.createColors(colours);
  const paint = { error: red, warning: yellow, information: cyan, hint: cyan } satisfies Record<Severity, unknown>;
  const lines = problems.flatMap(problem => [
    `${bold(placeText(problem))}: ${paint[problem.severity](problem.severity)} ${problem.code}: ${printable(problem.message)}`,
    ...problem.related.map(place => dim(`    ${placeText(place)}: ${printable(place.message)}`)),
  ]);
  return lines.map(line => `${line}\n`).join('');
}

function placeText({ file, line, column }: Spot): string {
  return `${printable(file)}:${line}:${column}`;
}
