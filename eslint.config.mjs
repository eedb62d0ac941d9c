import tseslint from 'typescript-eslint';

/** Decisions about geometry are exact: no floats, no Math, in the folders that decide. */
const exactOnly = {
  'no-restricted-globals': ['error', 'Math', 'parseFloat', 'NaN', 'Infinity'],
  'no-restricted-properties': [
    'error',
    { object: 'Number', property: 'EPSILON', message: 'Decide exactly (server/src/exact).' },
    { object: 'Number', property: 'parseFloat', message: 'Decide exactly (server/src/exact).' },
  ],
  'no-restricted-syntax': [
    'error',
    { selector: 'Literal[raw=/^[0-9_]*\\.[0-9]/]', message: 'A float literal cannot decide anything: use exact numbers.' },
    { selector: 'Literal[raw=/^[0-9.]+e/i]', message: 'A float literal cannot decide anything: use exact numbers.' },
    { selector: "CallExpression:matches([callee.property.name='toNumber'], [callee.name='toNumber'])", message: 'Leave the exact numbers only in drawing and output.' },
  ],
};

export default tseslint.config(
  { ignores: ['dist/', 'node_modules/', '.cache/', 'out/', 'samples/**/out/'] },
  ...tseslint.configs.strictTypeChecked,
  {
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    rules: {
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      '@typescript-eslint/no-confusing-void-expression': 'off',
      '@typescript-eslint/no-unnecessary-condition': 'off',
      '@typescript-eslint/no-non-null-assertion': 'error',
      '@typescript-eslint/consistent-type-imports': 'error',
      'eqeqeq': 'error',
      'no-eval': 'error',
      'no-console': 'error',
      'max-lines': ['error', { max: 350, skipBlankLines: true, skipComments: true }],
    },
  },
  { files: ['server/src/{exact,model,geometry,checks}/**/*.ts', 'server/src/**/verify*.ts'], rules: exactOnly },
  { files: ['**/*.mjs'], extends: [tseslint.configs.disableTypeChecked] },
  { files: ['test/**', '*.mjs', '.ci/**', 'samples/**'], rules: { 'no-console': 'off', 'max-lines': 'off' } },
);
