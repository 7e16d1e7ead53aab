import stylistic from '@stylistic/eslint-plugin';
import { defineConfig } from 'eslint/config';
import tseslint from 'typescript-eslint';
import { boundaries } from './eslint.boundaries.mjs';

const LINE = {
  code: 120,
  ignoreUrls: true,
  ignoreRegExpLiterals: true,
  // A sentence that the grower reads stays whole, so that it is found by searching for it.
  ignoreStrings: true,
  ignoreTemplateLiterals: true,
};

const style = {
  plugins: { style: stylistic },
  rules: {
    'max-lines': ['error', 300],
    'style/max-len': ['error', LINE],
    'style/quotes': ['error', 'single', { avoidEscape: true }],
    'style/semi': ['error', 'always'],
    'style/eol-last': 'error',
    'style/no-trailing-spaces': 'error',
    'style/comma-dangle': ['error', 'always-multiline'],
    eqeqeq: 'error',
    'prefer-const': 'error',
    'object-shorthand': 'error',
  },
};

const types = {
  files: ['{client,server,tests}/**/*.ts'],
  extends: [tseslint.configs.strictTypeChecked, tseslint.configs.stylisticTypeChecked],
  languageOptions: { parserOptions: { projectService: true } },
  rules: {
    '@typescript-eslint/consistent-type-imports': 'error',
    '@typescript-eslint/explicit-module-boundary-types': 'error',
    '@typescript-eslint/switch-exhaustiveness-check': ['error', { considerDefaultExhaustiveForUnions: true }],
    '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
    '@typescript-eslint/no-confusing-void-expression': ['error', {
      ignoreArrowShorthand: true, ignoreVoidReturningFunctions: true,
    }],
    '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_' }],
    // An index that a loop or a table has bounded needs no second check.
    '@typescript-eslint/no-non-null-assertion': 'off',
    // Both forms read well; a union cannot be an interface.
    '@typescript-eslint/consistent-type-definitions': 'off',
  },
};

const tests = {
  files: ['tests/**/*.ts'],
  rules: {
    '@typescript-eslint/explicit-module-boundary-types': 'off',
    '@typescript-eslint/no-unsafe-assignment': 'off',
    '@typescript-eslint/no-unsafe-member-access': 'off',
  },
};

export default defineConfig(
  { ignores: ['dist/', 'node_modules/'] },
  { linterOptions: { reportUnusedDisableDirectives: 'error' } },
  { files: ['**/*.{ts,mjs,js}'], ...style },
  { files: ['.config/*.ts'], extends: [tseslint.configs.strict] },
  types,
  tests,
  boundaries,
);
