import schema from '@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json';
import Ajv from 'ajv-draft-04';
import type { Log } from 'sarif';
import { describe, expect, it } from 'vitest';
import { version } from '../../package.json';
import { folderWith } from '../disk/helpers.ts';
import { plumule } from './run.ts';

const JOURNAL = `zone Europe/Vienna
lot A-1 Trollius europaeus, 20 seeds
lot A-1 Trollius chinensis, 10 seeds
count A-1 2026-01-19, 3 germinatd
soak A-1 2026-01-10 19:00, GA3 500 ppm, 30 h
`;

async function checked(format: string, ...more: string[]) {
  const folder = await folderWith({ 'winter 2026/käfig, a.germ': JOURNAL });
  return plumule(folder, 'check', '--format', format, '--today', '2026-01-20T08:00', '.', ...more);
}

describe('plumule check --format json', () => {
  it('is data of a version, with every problem, its place, what it speaks of and what would mend it', async () => {
    const { code, stdout } = await checked('json', 'gone.germ');
    expect(code).toBe(2);
    const data = JSON.parse(stdout) as Record<string, unknown>;
    expect(Object.keys(data)).toEqual(['version', 'plumule', 'journals', 'counts', 'problems', 'unread']);
    expect(data).toMatchObject({
      version: 1,
      plumule: version,
      journals: [{ files: ['winter 2026/käfig, a.germ'], zone: 'Europe/Vienna', now: '2026-01-20T08:00' }],
      unread: [{ path: 'gone.germ', message: 'there is no such file or folder' }],
    });
    const problems = data.problems as Record<string, unknown>[];
    const counts = data.counts as Record<string, number>;
    expect(problems.find(({ code }) => code === 'duplicate-definition')).toMatchObject({
      file: 'winter 2026/käfig, a.germ', line: 3, column: 5, endColumn: 8, severity: 'error',
      related: [{ file: 'winter 2026/käfig, a.germ', line: 2, column: 5, endColumn: 8 }],
    });
    expect(problems.find(({ line }) => line === 4)).toMatchObject({
      fixes: [{ column: 25, endColumn: 34, text: 'germinated' }],
    });
    expect(Object.keys(counts)).toEqual(['error', 'warning', 'information', 'hint']);
    for (const [severity, n] of Object.entries(counts)) {
      expect(problems.filter(each => each.severity === severity)).toHaveLength(n);
    }
    for (const problem of problems) {
      expect(Object.keys(problem)).toEqual([
        'file', 'line', 'column', 'endColumn', 'severity', 'code', 'message', 'related', 'fixes',
      ]);
    }
  });

  it('is data too where there is nothing to tell', async () => {
    const folder = await folderWith({});
    const { code, stdout } = await plumule(folder, 'check', '--format', 'json');
    expect(code).toBe(2);
    expect(JSON.parse(stdout)).toMatchObject({ version: 1, journals: [], problems: [], unread: [{ path: '.' }] });
  });
});

describe('plumule check --format sarif', () => {
  const valid = new Ajv({ strict: false, validateFormats: false, unicodeRegExp: false }).compile(schema);

  it('is a log that the schema of SARIF 2.1.0 accepts', async () => {
    const log: unknown = JSON.parse((await checked('sarif', 'gone.germ')).stdout);
    expect(valid(log), JSON.stringify(valid.errors)).toBe(true);
    // The schema would not accept just anything.
    expect(valid({ ...(log as Log), runs: [{ results: [] }] })).toBe(false);
  });

  it('counts columns in UTF-16 units, names rules, and has addresses in place of paths', async () => {
    const { runs: [run] } = JSON.parse((await checked('sarif')).stdout) as Log;
    expect(run?.columnKind).toBe('utf16CodeUnits');
    expect(run?.invocations).toEqual([{ executionSuccessful: true, toolExecutionNotifications: [] }]);
    const result = run?.results?.find(({ ruleId }) => ruleId === 'soak-too-long');
    expect(result).toMatchObject({
      level: 'warning',
      locations: [{
        physicalLocation: {
          artifactLocation: { uri: 'winter%202026/k%C3%A4fig%2C%20a.germ' },
          region: { startLine: 5, startColumn: 41, endColumn: 45 },
        },
      }],
    });
    expect(run?.tool.driver.rules?.[result?.ruleIndex ?? -1]?.id).toBe('soak-too-long');
  });

  it('tells of paths that could not be read', async () => {
    const { runs: [run] } = JSON.parse((await checked('sarif', 'gone.germ')).stdout) as Log;
    expect(run?.invocations).toMatchObject([{
      executionSuccessful: false,
      toolExecutionNotifications: [{ level: 'error', message: { text: 'there is no such file or folder' } }],
    }]);
  });
});

describe('plumule check --format github', () => {
  it('is a workflow command for each problem, its commas and percent signs escaped', async () => {
    const folder = await folderWith({ 'käfig, a.germ': JOURNAL.replace('500 ppm', '500 %') });
    const { stdout } = await plumule(folder, 'check', '--format', 'github', '--today', '2026-01-20');
    const lines = stdout.trimEnd().split('\n');
    expect(lines).toContainEqual(
      expect.stringMatching(/^::error file=käfig%2C a\.germ,line=3,col=5,endColumn=8,title=duplicate-definition::Lot “A-1” is /));
    expect(lines).toContainEqual(expect.stringMatching(/^::warning .*title=strength-slip::GA3 500 %25 is far/));
    for (const line of lines) expect(line).toMatch(/^::(error|warning|notice) file=/);
  });

  it('lets nothing written in a journal steer the log', async () => {
    const folder = await folderWith({ 'a.germ': 'zone Mars/\u001b[31mBase\u202e\n' });
    const { stdout } = await plumule(folder, 'check', '--format', 'github');
    expect(stdout).toContain('::error file=a.germ,line=1,col=6,');
    expect(stdout).toContain('“Mars/\ufffd[31mBase\ufffd” is not a time zone');
  });
});
