/** The man page, from the same tables as the help; the build writes it to dist/plumule.1. */
import { version } from '../../../../package.json';
import { exitTexts, plumule, TOGETHER } from '../program.ts';
import { commandRows, type CommandRow } from './tables.ts';

export function manPage(): string {
  return [
    `.TH PLUMULE 1 "" "Plumule ${version}" "User Commands"`,
    '.SH NAME', `plumule \\- ${roff('keep the journal of a grower who raises plants from dormant seed')}`,
    '.SH SYNOPSIS', '.B plumule', '.I command', '[options]',
    '.SH DESCRIPTION', roff(plumule.description()), '.PP', roff(TOGETHER),
    '.SH COMMANDS', ...commandRows(plumule).flatMap(commandPart),
    '.SH EXIT STATUS', ...exitTexts.flatMap((text, code) => ['.TP', String(code), roff(text)]),
    '.SH SEE ALSO', roff('The format of the journals, and all commands with examples, stand in the folder syntaxes of the package.'),
    '',
  ].join('\n');
}

function commandPart({ name, usage, description, arguments: args, options, example }: CommandRow): string[] {
  return [
    `.SS ${name}`, `.B plumule ${name}`, roff(usage), '.PP', roff(description),
    ...args.flatMap(({ placeholder, summary }) => (summary === '' ? [] : ['.TP', `.I ${roff(placeholder)}`, roff(summary)])),
    ...options.flatMap(({ names, placeholder, summary }) => [
      '.TP', `.B ${roff(names.join(', '))}${placeholder === '' ? '' : ` ${roff(placeholder)}`}`, roff(summary),
    ]),
    '.PP', 'Example:', '.PP', '.nf', '.RS 4', roff(example), '.RE', '.fi',
  ];
}

/** Text on one line, of which nothing is a command to the formatter, in ASCII. */
function roff(text: string): string {
  return text.replace(/\s+/g, ' ').replaceAll('\\', '\\e').replaceAll('-', '\\-').replace(/^(?=[.'])/, '\\&')
    .replace(/[^\x20-\x7e]/gu, sign => `\\[u${sign.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}]`);
}
