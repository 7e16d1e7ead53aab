import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planSetup, type Repository } from '../../server/src/setup/plan.ts';

const empty: Repository = { attributes: undefined, settings: {}, hook: undefined };
const LINE = '*.germ merge=plumule diff=plumule';

const lines = fc.array(fc.constantFrom('*.png binary', '', '# a comment', '*.germ text', LINE, 'exit 0', 'echo é'), { maxLength: 5 });
const repositories: fc.Arbitrary<Repository> = fc.record({
  attributes: fc.option(fc.tuple(lines, fc.constantFrom('\n', '\r\n', '')).map(([all, end]) => all.join('\n') + end), { nil: undefined }),
  settings: fc.constantFrom<Repository['settings']>({}, { 'merge.plumule.driver': 'another %A' }),
  hook: fc.option(fc.tuple(fc.constantFrom('#!/bin/sh\n', '#!/usr/bin/env bash\n', '#!/usr/bin/python3\n'), lines)
    .map(([first, rest]) => first + rest.join('\n')), { nil: undefined }),
});

describe('setting a repository up', () => {
  it('gives it the line, the settings and the hook, and says each', () => {
    const { after, changes, notes } = planSetup(empty);
    expect(after.attributes).toBe(`${LINE}\n`);
    expect(after.settings['merge.plumule.driver']).toBe('plumule merge %O %A %B --marker-size %L --name %P');
    expect(after.hook).toMatch(/^#!\/bin\/sh\n# plumule: begin.*plumule check --staged.*# plumule: end\n$/s);
    expect(changes.map(({ place }) => place)).toEqual(['attributes', 'settings', 'settings', 'settings', 'hook']);
    expect(notes).toEqual([]);
  });

  it('changes nothing the second time, and taking it out leaves what was there before', () => {
    fc.assert(fc.property(repositories, before => {
      const { after } = planSetup(before);
      expect(planSetup(after).changes).toEqual([]);
      // What has nothing but a first line, or nothing at all, is taken for what the set-up itself would write.
      fc.pre(!(before.attributes ?? '').includes(LINE) && before.hook?.trim() !== '#!/bin/sh');
      const undone = planSetup(after, true).after;
      expect(planSetup(undone, true).changes).toEqual([]);
      expect({ ...undone, attributes: (undone.attributes ?? '').trimEnd() })
        .toEqual({ ...before, attributes: (before.attributes ?? '').trimEnd() });
    }));
  });

  it('puts its part before all else that a hook does, and into no hook in another language', () => {
    const shell = planSetup({ ...empty, hook: '#!/bin/bash\nnpm test\nexit 0\n' });
    expect(shell.after.hook).toMatch(/^#!\/bin\/bash\n# plumule: begin.*# plumule: end\nnpm test\nexit 0\n$/s);
    const python = '#!/usr/bin/env python3\nprint(1)\n';
    const other = planSetup({ ...empty, hook: python });
    expect(other.after.hook).toBe(python);
    expect(other.notes).toEqual([expect.stringContaining('not a shell script')]);
  });

  it('leaves a hook of blank lines alone the second time', () => {
    const { after } = planSetup({ ...empty, hook: '#!/bin/sh\n\n' });
    expect(planSetup(after).changes).toEqual([]);
  });

  it('leaves a setting that somebody made, and says so', () => {
    const own = { 'merge.plumule.driver': 'node plumule.cjs merge %O %A %B' } as const;
    expect(planSetup({ ...empty, settings: own }).after.settings).toMatchObject(own);
    expect(planSetup({ ...empty, settings: own }, true)).toMatchObject({ after: { settings: own }, notes: [expect.stringContaining('stays')] });
  });
});
