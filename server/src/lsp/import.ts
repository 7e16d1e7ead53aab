/** The request behind the editor's import of a sheet. */
import type { Connection } from 'vscode-languageserver';
import { decodeTable } from '../import/encoding.ts';
import { importTable } from '../import/import.ts';
import { mappingText, readMapping } from '../import/mapping.ts';
import type { Answers } from '../import/answers.ts';
import type { Question } from '../import/questions.ts';
import { readTable } from '../import/table.ts';
import { listLines, mappingLines, resultLine } from '../import/words.ts';
import { ownRequests } from './own-requests.ts';
import type { Service } from './service.ts';

/** A sheet as the client read it. */
export interface SheetAsked {
  readonly name: string;
  /** Its bytes, in base64. */
  readonly bytes: string;
  /** The text of the mapping beside it, if there is one. */
  readonly mapping: string | undefined;
  readonly answers: Answers;
  /** The texts of the journals in the folder of the target, by address. */
  readonly files: Readonly<Record<string, string>>;
  readonly target: string;
}

export interface ImportShown {
  /** Why the sheet cannot be read. */
  readonly fault?: string;
  readonly questions: readonly Question[];
  /** The text of the target with the records. */
  readonly after: string;
  readonly records: number;
  readonly mapping: string;
  /** What there is to say: in one line, and in full. */
  readonly result: string;
  readonly list: string;
}

export function serveImport(connection: Connection, service: Service): void {
  ownRequests(connection, service)('import', null, ({ sheet }): ImportShown | null => (sheet ? shown(sheet) : null));
}

function shown({ name, bytes, mapping, answers, files, target }: SheetAsked): ImportShown {
  const saved = mapping === undefined ? undefined : readMapping(mapping);
  if (saved && 'fault' in saved) return failed(`${name}.mapping.json: ${saved.fault}`);
  const decoded = decodeTable(Uint8Array.from(atob(bytes), letter => letter.charCodeAt(0)));
  if ('fault' in decoded) return failed(`${name}: ${decoded.fault}`);
  const table = readTable(decoded.text, saved?.delimiter);
  if ('fault' in table) return failed(`${name}: ${table.fault}`);
  const result = importTable({ name, table, mapping: saved, answers, files: new Map(Object.entries(files)), target });
  if ('fault' in result) return failed(`${name}: ${result.fault}`);
  const { questions, after, records } = result;
  const list = [`${name}: ${resultLine(result)}`, '', ...listLines(result), '', ...mappingLines(result.mapping, decoded.encoding)];
  return {
    questions, after, records, mapping: mappingText(result.mapping), result: resultLine(result), list: `${list.join('\n')}\n`,
  };
}

function failed(fault: string): ImportShown {
  return { fault, questions: [], after: '', records: 0, mapping: '', result: '', list: '' };
}
