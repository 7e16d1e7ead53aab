import type { Severity } from '../model/problems.ts';
import { printable } from '../report/printable.ts';
import type { ListedProblem } from './listed.ts';

const commands: Record<Severity, string> = { error: 'error', warning: 'warning', information: 'notice', hint: 'notice' };

/** Workflow commands of GitHub Actions: each problem becomes an annotation of its line, and a line of a log. */
export function checkGithub(problems: readonly ListedProblem[]): string {
  return problems.map(({ file, line, column, endColumn, severity, code, message }) => {
    const properties = { file, line, col: column, endColumn, title: code };
    const written = Object.entries(properties).map(([name, value]) => `${name}=${escapeProperty(String(value))}`);
    return `::${commands[severity]} ${written.join(',')}::${escapeData(printable(message))}\n`;
  }).join('');
}

function escapeData(text: string): string {
  return text.replaceAll('%', '%25').replaceAll('\r', '%0D').replaceAll('\n', '%0A');
}

function escapeProperty(text: string): string {
  return escapeData(text).replaceAll(':', '%3A').replaceAll(',', '%2C');
}
