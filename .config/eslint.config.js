import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import js from '@eslint/js';
import jsdoc from 'eslint-plugin-jsdoc';
import tseslint from 'typescript-eslint';

const root = dirname(dirname(fileURLToPath(import.meta.url)));

const shapeOfModules = [
  {
    selector: 'ExportDefaultDeclaration',
    message: 'Export by name, so that every import uses the same word.',
  },
  { selector: 'ExportAllDeclaration', message: 'List what a module offers.' },
  {
    selector:
      'ExportNamedDeclaration > VariableDeclaration > VariableDeclarator > ArrowFunctionExpression',
    message: 'Write an exported function with `export function`.',
  },
  { selector: 'TSEnumDeclaration', message: 'Use a union of texts.' },
  { selector: 'TSModuleDeclaration[kind="namespace"]', message: 'Use a module.' },
];

const noClockOrChance = {
  'no-restricted-globals': [
    'error',
    { name: 'Date', message: 'The engine has no clock; take the date as an argument.' },
    { name: 'performance', message: 'The engine has no clock.' },
    { name: 'crypto', message: 'The engine has no chance; take the number as an argument.' },
  ],
  'no-restricted-properties': [
    'error',
    {
      object: 'Math',
      property: 'random',
      message: 'The engine has no chance; take the number as an argument.',
    },
  ],
};

export default tseslint.config(
  { ignores: ['**/dist/**', '**/node_modules/**', '**/coverage/**', '**/.cache/**', '**/*.d.ts'] },
  { linterOptions: { reportUnusedDisableDirectives: 'error' } },
  {
    files: ['**/*.ts'],
    extends: [js.configs.recommended, tseslint.configs.strictTypeChecked],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: root } },
    rules: {
      '@typescript-eslint/consistent-type-imports': [
        'error',
        { fixStyle: 'inline-type-imports', disallowTypeAnnotations: false },
      ],
      '@typescript-eslint/explicit-module-boundary-types': 'error',
      '@typescript-eslint/prefer-readonly': 'error',
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      // A switch over `kind` names every case; one with a default has answered for the rest.
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true },
      ],
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_' }],
      complexity: ['error', 12],
      eqeqeq: 'error',
      'max-depth': ['error', 3],
      'max-lines': ['error', 300],
      'max-lines-per-function': ['error', { max: 60, skipBlankLines: true, skipComments: true }],
      'max-params': ['error', 4],
      'no-console': 'error',
      'no-restricted-syntax': ['error', ...shapeOfModules],
    },
  },
  {
    // What is opened here is a handful of short verbs over one state, written as functions inside one
    // function; each of them is held to the rules above.
    files: [
      'extension/engine/workbook/{evaluation,meaning,register-file,row-store,workbook-core,workbook}.ts',
    ],
    rules: {
      'max-lines-per-function': ['error', { max: 110, skipBlankLines: true, skipComments: true }],
    },
  },
  { files: ['extension/engine/**/*.ts'], rules: noClockOrChance },
  {
    files: ['extension/engine/{trade,geometry,skin,cutting,estimate}/**/*.ts'],
    plugins: { jsdoc },
    rules: {
      'jsdoc/no-types': 'error',
      'jsdoc/require-jsdoc': [
        'error',
        { publicOnly: true, require: { FunctionDeclaration: true } },
      ],
    },
  },
  {
    files: ['extension/command-line/**/*.ts'],
    rules: { 'no-console': 'off' },
  },
  {
    files: ['tests/**/*.ts'],
    rules: {
      '@typescript-eslint/explicit-module-boundary-types': 'off',
      'max-lines-per-function': 'off',
      'no-console': 'off',
    },
  },
  {
    files: ['**/*.{js,cjs,mjs}'],
    extends: [js.configs.recommended],
    languageOptions: {
      globals: {
        AbortSignal: 'readonly',
        Buffer: 'readonly',
        URL: 'readonly',
        URLSearchParams: 'readonly',
        clearTimeout: 'readonly',
        console: 'readonly',
        fetch: 'readonly',
        process: 'readonly',
        setTimeout: 'readonly',
      },
    },
    rules: {
      complexity: ['error', 12],
      eqeqeq: 'error',
      'max-lines': ['error', 300],
      'max-lines-per-function': ['error', { max: 60, skipBlankLines: true, skipComments: true }],
    },
  },
  {
    files: ['**/*.cjs'],
    languageOptions: {
      sourceType: 'commonjs',
      globals: {
        module: 'writable',
        require: 'readonly',
        exports: 'writable',
        __dirname: 'readonly',
      },
    },
  },
);
