import path from 'node:path';
import { findJournals } from '../disk/find.ts';
import { readBytes, readJournal } from '../disk/read.ts';
import { createJournal, rewriteJournal, writeOurs } from '../disk/write.ts';
import { DiskFault, faultOf } from '../disk/fault.ts';
import { decodeTable } from '../import/encoding.ts';
import { importTable, type Imported } from '../import/import.ts';
import type { Answers, Delimiter } from '../import/answers.ts';
import { mappingText, readMapping, type Mapping } from '../import/mapping.ts';
import { readTable } from '../import/table.ts';
import { diffLines, listLines, mappingLines, resultLine } from '../import/words.ts';
import type { Question } from '../import/questions.ts';
import { printable } from '../report/printable.ts';
import { exits, type Exit } from './exits.ts';
import { nameOf, unreadOf } from './names.ts';
import { complain, complainOf, print } from './output.ts';

export interface ImportOptions extends Answers {
  /** The journal that takes the records; without it nothing is written. */
  readonly output?: string;
  /** Only show what would be written to `output`. */
  readonly preview?: true;
  readonly delimiter?: Delimiter;
}

/** `plumule import`: the rows of a sheet as records of a journal; without a file to write to, what they would be. */
export async function importSheet(sheet: string, options: ImportOptions): Promise<Exit> {
  const { output, preview, delimiter, ...answers } = options;
  try {
    const target = path.resolve(output ?? journalBeside(sheet));
    if (!target.endsWith('.germ')) throw new DiskFault(target, 'the name of a journal must end in .germ');
    const saved = await savedMapping(sheet);
    const decoded = decodeTable(await readBytes(sheet));
    if ('fault' in decoded) throw new DiskFault(path.resolve(sheet), decoded.fault);
    const table = readTable(decoded.text, delimiter ?? saved?.delimiter);
    if ('fault' in table) throw new DiskFault(path.resolve(sheet), table.fault);
    const files = await journalAround(target);
    const result = importTable({ name: path.basename(sheet), table, mapping: saved, answers, files, target });
    if ('fault' in result) throw new DiskFault(path.resolve(sheet), result.fault);
    const { mapping, questions, after } = result;
    await saveMapping(sheet, saved, mapping);
    say(mappingLines(mapping, decoded.encoding));
    if (questions.length > 0) return asked(questions);
    const before = files.get(target);
    say(['', ...diffLines(nameOf(target), before ?? '', after), ...(before === after ? [] : [''])]);
    say([resultLine(result), ...listLines(result)]);
    await write(result, { sheet, target, before, isWritten: output !== undefined && !preview });
    return result.left.length > 0 ? exits.problems : exits.clean;
  } catch (error) {
    complainOf([unreadOf(error)]);
    return exits.unread;
  }
}

function say(lines: readonly string[]): void {
  print(lines.map(line => `${printable(line)}\n`).join(''));
}

function journalBeside(sheet: string): string {
  return `${sheet.slice(0, sheet.length - path.extname(sheet).length)}.germ`;
}

function mappingPath(sheet: string): string {
  return path.resolve(`${sheet}.mapping.json`);
}

async function savedMapping(sheet: string): Promise<Mapping | undefined> {
  const file = mappingPath(sheet);
  const text = await ifThere(file);
  const mapping = text === undefined ? undefined : readMapping(text);
  if (mapping && 'fault' in mapping) throw new DiskFault(file, mapping.fault);
  return mapping;
}

async function ifThere(file: string): Promise<string | undefined> {
  try {
    return await readJournal(file);
  } catch (error) {
    if (faultOf(file, error).gone) return undefined;
    throw error;
  }
}

/** Written only where it says something new: a grower may have it in an order of their own. */
async function saveMapping(sheet: string, saved: Mapping | undefined, mapping: Mapping): Promise<void> {
  const text = mappingText(mapping);
  if (saved && mappingText(saved) === text) return;
  const file = mappingPath(sheet);
  await writeOurs(file, text, 'mapping');
  complain(`wrote ${nameOf(file)}, which says what each column is; change it if something is wrong, and import again`);
}

/** The journals in the folder of the target; one that cannot be read could hold what would be written again. */
async function journalAround(target: string): Promise<Map<string, string>> {
  const { files, faults } = await findJournals(path.dirname(target), false);
  const [fault] = faults;
  if (fault) throw fault;
  const texts = new Map<string, string>();
  for (const file of files) texts.set(file, await readJournal(file));
  return texts;
}

function asked(questions: readonly Question[]): Exit {
  for (const { about, text, choices } of questions) {
    const option = `--${about.replaceAll(/[A-Z]/g, letter => `-${letter.toLowerCase()}`)}`;
    complain(text);
    if (choices.length === 0) complain(`  ${option} NUMBER`);
    for (const { value, says } of choices) complain(`  ${option} ${value}: ${says}`);
  }
  complain('nothing was imported; answer with these options');
  return exits.problems;
}

interface Writing {
  readonly sheet: string;
  readonly target: string;
  readonly before: string | undefined;
  readonly isWritten: boolean;
}

async function write({ after, records }: Imported, { sheet, target, before, isWritten }: Writing): Promise<void> {
  if (records === 0) return;
  if (!isWritten) {
    complain(`nothing was written; “plumule import ${sheet} -o ${nameOf(target)}” writes it`);
    return;
  }
  if (before === undefined) await createJournal(target, after);
  else await rewriteJournal(target, before, after);
  complain(`wrote ${records} ${records === 1 ? 'record' : 'records'} to ${nameOf(target)}`);
}
