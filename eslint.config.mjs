import tseslint from 'typescript-eslint';

export default tseslint.config(
  { ignores: ['dist/', 'node_modules/', '.vscode-test/', 'coverage/', 'test/corpus/'] },
  ...tseslint.configs.recommendedTypeChecked,
  {
    files: ['src/**/*.ts', 'test/**/*.ts'],
    languageOptions: { parserOptions: { project: ['./tsconfig.json', './src/page/tsconfig.json'], tsconfigRootDir: import.meta.dirname } },
    rules: {
      '@typescript-eslint/no-floating-promises': ['error', { checkThenables: true }],
      '@typescript-eslint/switch-exhaustiveness-check': ['error', { considerDefaultExhaustiveForUnions: true }],
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-explicit-any': 'error',
      'no-control-regex': 'off',
      eqeqeq: 'error',
      'no-console': 'off',
    },
  },
  { files: ['**/*.mjs', '**/*.mts'], ...tseslint.configs.disableTypeChecked },
);
