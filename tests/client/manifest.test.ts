import { readFile } from 'node:fs/promises';
import { expect, test } from 'vitest';

interface Manifest {
  readonly contributes: {
    readonly views: Readonly<Record<string, readonly { readonly id: string }[]>>;
    readonly viewsWelcome: readonly { readonly view: string; readonly contents: string; readonly when: string }[];
  };
}

test('each view says that the journal is being read, until it is, in words without marks of Markdown', async () => {
  const { contributes } = JSON.parse(await readFile(new URL('../../package.json', import.meta.url), 'utf8')) as Manifest;
  for (const { id } of Object.values(contributes.views).flat()) {
    const welcomes = contributes.viewsWelcome.filter(({ view }) => view === id);
    expect(welcomes.filter(({ when }) => when === '!plumule.read').map(({ contents }) => contents), id).toEqual(['Reading the journal ...']);
    // A view shows them as they are.
    expect(welcomes.map(({ contents }) => contents).join('\n'), id).not.toMatch(/[`*_]/);
  }
});
