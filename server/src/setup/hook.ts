/** The part of a pre-commit hook that checks journals. It stands first, so that it runs whatever else the hook does. */

const BEGIN = '# plumule: begin (plumule setup git --undo removes this part)';
const END = '# plumule: end';

// git alone answers where no journal is staged: to start Node takes longer than all the rest.
const PART = `${BEGIN}
if ! git diff --cached --quiet --diff-filter=d -- '*.germ' '*.GERM'; then
  if command -v plumule >/dev/null 2>&1; then
    plumule check --staged --severity error || exit 1
  else
    echo 'plumule is not on the path, so the journals were not checked' >&2
  fi
fi
${END}
`;

const NEW = '#!/bin/sh\n';

/** Whether a part in the language of the shell can be put into it. */
export function takesPart(hook: string): boolean {
  return /^#!.*\b(?:|ba|da|k|z)sh\b/.test(hook);
}

/** The hook with the part, once and as it is now. */
export function withPart(hook: string | undefined): string {
  if (hook === undefined || hook === '') return NEW + PART;
  const rest = aroundPart(hook) ?? hook;
  const first = rest.indexOf('\n') + 1;
  return first === 0 ? `${rest}\n${PART}` : rest.slice(0, first) + PART + rest.slice(first);
}

/** The hook without the part; undefined where nothing else is in it. */
export function withoutPart(hook: string | undefined): string | undefined {
  if (hook === undefined) return undefined;
  const rest = aroundPart(hook);
  return rest?.trim() === NEW.trim() ? undefined : rest ?? hook;
}

/** Undefined where the part is not in it. */
function aroundPart(hook: string): string | undefined {
  const start = hook.indexOf(BEGIN);
  const end = hook.indexOf(END, start);
  if (start < 0 || end < 0) return undefined;
  const next = hook.indexOf('\n', end) + 1;
  return hook.slice(0, start) + (next === 0 ? '' : hook.slice(next));
}
