import eslint from '@eslint/js';
import { defineConfig, globalIgnores } from 'eslint/config';
import reactHooks from 'eslint-plugin-react-hooks';
import globals from 'globals';
import tseslint from 'typescript-eslint';
import { layersRule } from './scripts/lint/layers.mjs';
import {
  everywhere,
  inPureLayers,
  inTests,
  inTheProgram,
  outsideTheDatabase,
} from './scripts/lint/restrictions.mjs';

const restrict = (...lists) => ({ 'no-restricted-syntax': ['error', ...lists.flat()] });

/** Names that a browser or Node brings and the language itself does not. */
function namesOutsideTheLanguage(...sources) {
  const names = new Set(sources.flatMap((source) => Object.keys(source)));
  for (const name of Object.keys(globals.es2025)) names.delete(name);
  return [...names];
}

const refuseNames = (names, message) => ({
  'no-restricted-globals': ['error', ...names.map((name) => ({ name, message }))],
});

export default defineConfig(
  globalIgnores(['dist/', 'release/', 'test-output/', 'node_modules/', 'tests/fixtures/']),
  { linterOptions: { reportUnusedDisableDirectives: 'error' } },
  eslint.configs.recommended,
  {
    rules: {
      eqeqeq: 'error',
      'no-empty': ['error', { allowEmptyCatch: false }],
      'object-shorthand': 'error',
      'prefer-const': 'error',
      ...restrict(everywhere),
    },
  },

  {
    files: ['**/*.{js,mjs,cjs}'],
    languageOptions: { globals: globals.node },
  },
  { files: ['**/*.cjs'], languageOptions: { sourceType: 'commonjs' } },

  // Typed rules for everything that a tsconfig includes.
  {
    files: ['{shared-types,analysis,electron,renderer,tests}/**/*.{ts,tsx}'],
    extends: [tseslint.configs.strictTypeChecked, tseslint.configs.stylisticTypeChecked],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    rules: {
      // Shapes are types (see restrictions.mjs); an interface can only widen one that a library declared.
      '@typescript-eslint/consistent-type-definitions': 'off',
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-confusing-void-expression': [
        'error',
        { ignoreArrowShorthand: true, ignoreVoidReturningFunctions: true },
      ],
      // Spreading a string into its code points is what its readers mean here.
      '@typescript-eslint/no-misused-spread': ['error', { allow: ['string'] }],
      '@typescript-eslint/no-misused-promises': ['error', { checksVoidReturn: { attributes: false } }],
      // What was caught is unknown, and may be thrown on once the cleaning up is done.
      '@typescript-eslint/only-throw-error': ['error', { allowThrowingUnknown: true }],
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      '@typescript-eslint/prefer-nullish-coalescing': [
        'error',
        { ignorePrimitives: { string: true, boolean: true } },
      ],
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true, requireDefaultForNonUnion: false },
      ],
      '@typescript-eslint/no-unnecessary-condition': [
        'error',
        { allowConstantLoopConditions: 'only-allowed-literals' },
      ],
      // A function that only promises because its type does is no fault.
      '@typescript-eslint/require-await': 'off',
      '@typescript-eslint/no-empty-function': 'off',
      // Ours are functions in plain objects, none of which knows a `this`.
      '@typescript-eslint/unbound-method': 'off',
      // A receiver may take a promise or nothing.
      '@typescript-eslint/no-invalid-void-type': 'off',
      // There are no enums here; both of these ask the compiler for much and find nothing it does not.
      '@typescript-eslint/no-unsafe-enum-assignment': 'off',
      '@typescript-eslint/no-unsafe-class-instance-assignment': 'off',
      // Would ask for the assertion that no-non-null-assertion refuses.
      '@typescript-eslint/non-nullable-type-assertion-style': 'off',
      // A type parameter used once may still name what a caller chooses.
      '@typescript-eslint/no-unnecessary-type-parameters': 'off',
    },
  },
  {
    files: ['*.ts'],
    extends: [tseslint.configs.strict],
  },

  // The layers.
  {
    files: ['{shared-types,analysis,electron,renderer,tests}/**/*.{ts,tsx}'],
    plugins: { docket: { rules: { layers: layersRule } } },
    rules: { 'docket/layers': 'error' },
  },
  {
    files: ['{shared-types,analysis}/**/*.ts'],
    rules: {
      'no-console': 'error',
      ...restrict(everywhere, inTheProgram, inPureLayers),
      ...refuseNames(
        namesOutsideTheLanguage(globals.browser, globals.node, globals.worker),
        'This layer knows neither page nor process.',
      ),
    },
  },
  {
    files: ['electron/**/*.ts'],
    ignores: ['electron/database/**'],
    rules: restrict(everywhere, inTheProgram, outsideTheDatabase),
  },
  { files: ['electron/database/**/*.ts'], rules: restrict(everywhere, inTheProgram) },
  {
    files: ['electron/**/*.ts'],
    rules: refuseNames(
      ['window', 'document', 'localStorage', 'sessionStorage', 'indexedDB', 'alert', 'HTMLElement'],
      'electron/ has no page.',
    ),
  },
  {
    files: ['renderer/**/*.{ts,tsx}'],
    extends: [reactHooks.configs.flat['recommended-latest']],
    rules: {
      'no-console': ['error', { allow: ['error'] }],
      ...restrict(everywhere, inTheProgram),
      ...refuseNames(
        ['process', 'Buffer', 'global', 'require', '__dirname', '__filename'],
        'The page has no Node.',
      ),
    },
  },
  {
    files: ['tests/**/*.ts'],
    rules: {
      ...restrict(everywhere, inTests),
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/no-misused-spread': 'off',
    },
  },
);
