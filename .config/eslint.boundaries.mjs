// What each folder of server/src may import. The data flows down this list, so a folder never knows those
// below it; journal/ and calendar/ alone use each other: days and durations there, a batch's history here.
const LAYERS = {
  text: [],
  model: [],
  syntax: ['text', 'model'],
  solutions: ['text', 'model'],
  measures: ['model'],
  journal: ['text', 'model', 'syntax', 'solutions', 'measures', 'calendar'],
  calendar: ['text', 'model', 'syntax', 'solutions', 'measures', 'journal'],
  merge: ['text', 'model', 'syntax', 'journal'],
  import: ['text', 'model', 'syntax', 'solutions', 'journal', 'merge'],
  setup: [],
  trials: ['model', 'solutions', 'measures', 'journal', 'calendar'],
  advice: ['model', 'solutions', 'measures', 'journal', 'calendar', 'trials'],
  words: ['model', 'syntax', 'solutions', 'measures', 'journal', 'calendar', 'trials', 'advice'],
  pictures: ['model', 'measures', 'journal', 'calendar', 'trials'],
  checks: ['text', 'model', 'syntax', 'solutions', 'measures', 'journal', 'calendar', 'trials', 'words'],
  changes: ['text', 'model', 'syntax', 'measures', 'journal', 'merge', 'words'],
  features: [
    'text', 'model', 'syntax', 'solutions', 'measures', 'journal', 'calendar', 'trials', 'advice', 'words', 'pictures', 'checks',
    'merge', 'import', 'changes',
  ],
  report: [
    'text', 'model', 'syntax', 'solutions', 'measures', 'journal', 'calendar', 'trials', 'advice', 'words', 'pictures', 'checks',
    'features',
  ],
  tables: ['model', 'solutions', 'measures', 'journal', 'calendar', 'trials', 'words', 'features', 'report'],
  publish: ['model', 'journal', 'calendar', 'pictures', 'trials', 'words', 'features', 'report', 'tables'],
};
// The rim: these know the world outside, and nobody but they know each other.
const RIM = ['disk', 'lsp', 'cli'];

const NODE = {
  regex: '^(node:|(assert|buffer|child_process|crypto|events|fs|http|https|net|os|path|process|stream|timers|url|util|' +
    'worker_threads|zlib)(/|$))',
  message: 'The core also runs in a browser: modules of Node belong into disk/, cli/ or main.node.ts.',
};
const PROTOCOL = {
  regex: '^(vscode$|vscode-languageserver|vscode-languageclient|vscode-jsonrpc)',
  message: 'Only lsp/ and the two main files know the protocol; use the types of the model.',
};

/** Relative imports of the folders named; `names` may also hold main.node and the like. */
const folders = (names, message) => ({ regex: `^(\\.\\.?/)+(${names.join('|')})(/|$)`, message });

function layer(name, allowed) {
  const forbidden = [...Object.keys(LAYERS), ...RIM].filter(f => f !== name && !allowed.includes(f));
  const may = allowed.length ? `nothing but ${allowed.join(', ')}` : 'no other folder';
  const message = `${name}/ may import ${may}.`;
  return {
    files: [`server/src/${name}/**/*.ts`],
    rules: {
      'no-restricted-imports': ['error', { patterns: [NODE, PROTOCOL, folders(forbidden, message)] }],
    },
  };
}

const CLOCK = {
  selector: 'CallExpression[callee.name="Date"], NewExpression[callee.name="Date"][arguments.length=0], ' +
    'MemberExpression[object.name="Date"][property.name="now"]',
  message: 'The core has no clock: `today` and `now` are arguments.',
};
const DATE = {
  selector: 'NewExpression[callee.name="Date"]',
  message: 'A Date counts in the zone of the machine: take a day of the model, or a UTCDate or TZDate.',
};
const MACHINE = [
  {
    selector: 'MemberExpression[property.name=/^(toLocale\\w*|localeCompare)$/]',
    message: 'These depend on the language of the machine.',
  },
  {
    selector: 'MemberExpression[object.name="Math"][property.name="random"]',
    message: 'The same journal must always give the same answer.',
  },
];

const PURE = {
  files: Object.keys(LAYERS).map(name => `server/src/${name}/**/*.ts`),
  rules: {
    'no-restricted-globals': ['error',
      ...['setTimeout', 'setInterval', 'setImmediate', 'queueMicrotask', 'performance'].map(name => (
        { name, message: 'The core has no clock and no timers: lsp/ and cli/ hand over `today` and `now`.' })),
      ...['process', 'Buffer', 'global', '__dirname', 'require'].map(name => (
        { name, message: 'The core also runs in a browser.' })),
      ...['console', 'fetch'].map(name => (
        { name, message: 'The core computes; lsp/ and cli/ talk to the world.' })),
    ],
    'no-restricted-syntax': ['error', CLOCK, DATE, ...MACHINE],
  },
};
// Here, and with the methods for UTC alone, a day becomes a date and back.
const DAY = {
  files: ['server/src/model/day.ts'],
  rules: { 'no-restricted-syntax': ['error', CLOCK, ...MACHINE] },
};

export const boundaries = [
  ...Object.entries(LAYERS).map(([name, allowed]) => layer(name, allowed)),
  PURE,
  DAY,
  {
    files: ['server/src/cli/**/*.ts', 'server/src/disk/**/*.ts'],
    rules: { 'no-restricted-imports': ['error', { patterns: [PROTOCOL] }] },
  },
  {
    files: ['server/src/lsp/**/*.ts', 'server/src/main.browser.ts'],
    rules: {
      'no-restricted-imports': ['error', {
        patterns: [NODE, folders(['cli', 'disk'], 'This also runs in a browser.')],
      }],
    },
  },
  {
    // Over stdio, standard output carries the protocol.
    files: ['server/src/lsp/**/*.ts', 'server/src/main.*.ts', 'client/src/**/*.ts'],
    rules: { 'no-console': 'error' },
  },
  {
    files: ['client/src/**/*.ts'],
    rules: {
      '@typescript-eslint/no-restricted-imports': ['error', {
        patterns: [
          { regex: 'server/src/', message: 'The client asks the server; it shares types alone.', allowTypeImports: true },
        ],
      }],
    },
  },
  {
    files: ['client/src/**/*.ts'],
    ignores: ['client/src/main.node.ts'],
    rules: { 'no-restricted-imports': ['error', { patterns: [NODE] }] },
  },
];
