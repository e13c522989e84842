import js from '@eslint/js';
import vue from 'eslint-plugin-vue';
import globals from 'globals';
import ts from 'typescript-eslint';
import { pureRoomRules } from './pure-rooms.eslint.mjs';

const typed = ['**/*.ts', '**/*.vue'];
const plain = ['**/*.mjs', '**/*.cjs', '**/*.js'];

/** Run from the project root: `npm run lint`. No file at the root, so that the root stays as it is. */
export default ts.config(
  { ignores: ['**/node_modules/**', '**/dist/**', '**/coverage/**', 'data/**', '**/.vite/**'] },
  { linterOptions: { reportUnusedDisableDirectives: 'error' } },
  js.configs.recommended,
  ...ts.configs.strictTypeChecked,
  ...vue.configs['flat/recommended'],
  {
    files: typed,
    languageOptions: {
      parserOptions: {
        projectService: { allowDefaultProject: ['frontend/vite.config.ts'] },
        tsconfigRootDir: new URL('../..', import.meta.url).pathname,
        extraFileExtensions: ['.vue'],
      },
    },
    rules: {
      '@typescript-eslint/consistent-type-imports': ['error', { fixStyle: 'inline-type-imports' }],
      '@typescript-eslint/switch-exhaustiveness-check': ['error', { considerDefaultExhaustiveForUnions: true }],
      '@typescript-eslint/restrict-template-expressions': [
        'error',
        { allowNumber: true, allowBoolean: true, allowNullish: true },
      ],
      '@typescript-eslint/no-confusing-void-expression': ['error', { ignoreArrowShorthand: true }],
      '@typescript-eslint/no-extraneous-class': ['error', { allowWithDecorator: true }],
      // Typed arrays and checked records make the compiler ask for guards that this rule calls needless.
      '@typescript-eslint/no-unnecessary-condition': 'off',
      '@typescript-eslint/no-unnecessary-type-parameters': 'off',
      '@typescript-eslint/unified-signatures': 'off',
      '@typescript-eslint/prefer-promise-reject-errors': 'off',
      '@typescript-eslint/only-throw-error': ['error', { allowThrowingUnknown: true }],
      // The compiler knows every name.
      'no-undef': 'off',
      'no-restricted-syntax': ['error', { selector: 'ExportDefaultDeclaration', message: 'named exports only' }],
      'max-lines': ['error', { max: 300, skipBlankLines: true, skipComments: true }],
      eqeqeq: 'error',
    },
  },
  { files: ['**/*.vue'], languageOptions: { parserOptions: { parser: ts.parser } } },
  {
    files: ['**/*.vue'],
    rules: {
      // Layout is Prettier's.
      'vue/html-indent': 'off',
      'vue/html-self-closing': 'off',
      'vue/html-closing-bracket-newline': 'off',
      'vue/max-attributes-per-line': 'off',
      'vue/singleline-html-element-content-newline': 'off',
      'vue/multiline-html-element-content-newline': 'off',
      'vue/first-attribute-linebreak': 'off',
      'vue/attributes-order': 'off',
      'vue/require-default-prop': 'off',
      'vue/no-v-html': 'error',
      'vue/component-api-style': ['error', ['script-setup']],
      'vue/block-lang': ['error', { script: { lang: 'ts' } }],
    },
  },
  // vite and vitest ask their config files for a default export.
  { files: ['**/vite.config.ts', 'tests/vitest.config.ts'], rules: { 'no-restricted-syntax': 'off' } },
  { files: plain, extends: [ts.configs.disableTypeChecked], languageOptions: { globals: globals.node } },
  pureRoomRules,
  {
    files: ['tests/**/*.ts'],
    rules: {
      'no-restricted-syntax': [
        'error',
        {
          selector:
            'MemberExpression[object.name=/^(test|it|describe)$/][property.name=/^(skip|skipIf|runIf|only|todo|fails)$/]',
          message: 'only helpers/requirements.ts may leave a test out: use suiteNeeding',
        },
      ],
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/no-unsafe-assignment': 'off',
      '@typescript-eslint/no-unsafe-member-access': 'off',
      '@typescript-eslint/no-unsafe-argument': 'off',
      '@typescript-eslint/no-unsafe-call': 'off',
      '@typescript-eslint/no-unsafe-return': 'off',
      '@typescript-eslint/unbound-method': 'off',
    },
  },
  { files: ['tests/helpers/requirements.ts', 'tests/vitest.config.ts'], rules: { 'no-restricted-syntax': 'off' } },
  // Marks that the rules look for stand there in pieces.
  { files: ['tests/house-rules/**'], rules: { '@typescript-eslint/no-unnecessary-template-expression': 'off' } },
);
