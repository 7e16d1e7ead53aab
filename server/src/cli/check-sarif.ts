import type { Location, Log, Notification, ReportingDescriptor, Result } from 'sarif';
import { version } from '../../../package.json';
import { problemKinds, type ProblemCode, type Severity } from '../model/problems.ts';
import { printableJson } from '../report/printable.ts';
import type { ListedProblem, Spot } from './listed.ts';
import type { Unread } from './names.ts';

const SCHEMA = 'https://json.schemastore.org/sarif-2.1.0.json';

const levels = {
  error: 'error', warning: 'warning', information: 'note', hint: 'note',
} as const satisfies Record<Severity, string>;

/** The problems as a log of SARIF 2.1.0 (OASIS standard); paths that could not be read are its notifications. */
export function checkSarif(problems: readonly ListedProblem[], unread: readonly Unread[]): string {
  const codes = [...new Set(problems.map(({ code }) => code))].sort();
  const log: Log = {
    $schema: SCHEMA,
    version: '2.1.0',
    runs: [{
      tool: { driver: { name: 'Plumule', version, rules: codes.map(ruleOf) } },
      invocations: [{
        executionSuccessful: unread.length === 0,
        toolExecutionNotifications: unread.map(notificationOf),
      }],
      columnKind: 'utf16CodeUnits',
      results: problems.map(problem => resultOf(problem, codes.indexOf(problem.code))),
    }],
  };
  return printableJson(log);
}

function ruleOf(code: ProblemCode): ReportingDescriptor {
  return {
    id: code,
    shortDescription: { text: code.replaceAll('-', ' ') },
    defaultConfiguration: { level: levels[problemKinds[code].severity] },
  };
}

function resultOf(problem: ListedProblem, ruleIndex: number): Result {
  const { code, severity, message, related } = problem;
  return {
    ruleId: code,
    ruleIndex,
    level: levels[severity],
    message: { text: message },
    locations: [locationOf(problem)],
    relatedLocations: related.map((place, id) => ({ ...locationOf(place), id, message: { text: place.message } })),
  };
}

function locationOf({ file, line, column, endColumn }: Spot): Location {
  return {
    physicalLocation: {
      artifactLocation: { uri: addressOf(file) },
      region: { startLine: line, startColumn: column, endColumn },
    },
  };
}

function notificationOf({ path, message }: Unread): Notification {
  return {
    level: 'error',
    message: { text: message },
    locations: [{ physicalLocation: { artifactLocation: { uri: addressOf(path) } } }],
  };
}

/** A path as a relative address. */
function addressOf(file: string): string {
  return file.split('/').map(encodeURIComponent).join('/');
}
