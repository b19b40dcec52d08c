import js from '@eslint/js';
import prettier from 'eslint-config-prettier';
import globals from 'globals';
import ts from 'typescript-eslint';

export default ts.config(
  { ignores: ['dist/', 'coverage/', '.data/', '.test-data/', 'libs/db/src/generated/', 'apps/server/src/openapi-metadata.ts'] },
  js.configs.recommended,
  {
    files: ['**/*.ts'],
    extends: [...ts.configs.recommendedTypeChecked],
    languageOptions: {
      parserOptions: { project: ['./tsconfig.json', './apps/server/assets/tsconfig.json'], tsconfigRootDir: import.meta.dirname },
    },
    rules: {
      '@typescript-eslint/switch-exhaustiveness-check': 'error',
      '@typescript-eslint/consistent-type-imports': ['error', { fixStyle: 'inline-type-imports' }],
      '@typescript-eslint/no-extraneous-class': 'off',
      // Leaving a field out of a copy is what the rest of a destructuring is for.
      '@typescript-eslint/no-unused-vars': ['error', { ignoreRestSiblings: true }],
      'max-lines': ['error', 400],
    },
  },
  { files: ['**/*.{mjs,cjs}'], languageOptions: { globals: globals.node } },
  { linterOptions: { reportUnusedDisableDirectives: 'error' } },
  prettier,
);
