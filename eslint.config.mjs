import next from '@next/eslint-plugin-next';
import jsxA11y from 'eslint-plugin-jsx-a11y';
import reactHooks from 'eslint-plugin-react-hooks';
import tseslint from 'typescript-eslint';

/**
 * The layers of the house, lowest first, and what each may not reach. Data flows one way:
 * file or form → validation → database → analysis → page.
 */
const forbidden = {
  'lib/memory': ['stats', 'measure', 'assess', 'store', 'refresh', 'reports', 'schedule', 'access', 'app'],
  'lib/stats': ['measure', 'assess', 'store', 'refresh', 'reports', 'commands', 'app'],
  'lib/measure': ['stats', 'assess', 'store', 'refresh', 'reports', 'commands', 'app'],
  'lib/assess': ['store', 'refresh', 'reports', 'commands', 'app'],
  'lib/bay': ['store', 'refresh', 'reports', 'commands', 'app'],
  'lib/store': ['stats', 'assess', 'refresh', 'reports', 'commands', 'app'],
  'lib/reports': ['store', 'refresh', 'commands', 'app'],
  'lib/refresh': ['stats', 'reports', 'commands', 'app'],
  'lib/identity': ['stats', 'measure', 'assess', 'refresh', 'reports', 'commands', 'access', 'app'],
  'lib/access': ['stats', 'reports', 'commands', 'app'],
  'lib/observe': ['stats', 'measure', 'assess', 'store', 'refresh', 'reports', 'schedule', 'access', 'app'],
  'lib/shield': ['stats', 'measure', 'assess', 'store', 'refresh', 'reports', 'schedule', 'access', 'app'],
  'lib/schedule': ['identity', 'access', 'interface', 'commands', 'app'],
  // Its own guarded door: a token says which shop.
  'lib/interface': ['identity', 'access', 'commands', 'app'],
  'lib/serving': ['identity', 'access', 'interface', 'commands', 'app'],
  // Pages, actions and endpoints reach data through the guarded door (lib/access) alone.
  app: ['store', 'refresh', 'commands'],
  seed: ['refresh', 'app', 'commands'],
};

const layer = (folder, rooms) => ({
  files: [`${folder}/**/*.{ts,tsx}`],
  rules: {
    'no-restricted-imports': [
      'error',
      {
        patterns: [
          {
            group: rooms.flatMap((room) =>
              room === 'app'
                ? ['@/app', '@/app/*', '@/app/**']
                : [`@/lib/${room}`, `@/lib/${room}/*`, `@/lib/${room}/**`],
            ),
            message: `${folder} may not import this: data flows file → validation → database → analysis → page, and reaches pages through lib/access.`,
          },
          {
            group: ['../../*', '../../**'],
            message: 'Reach another folder by its name (@/…), so that the layering check sees it.',
          },
        ],
      },
    ],
  },
});

export default tseslint.config(
  {
    ignores: [
      'node_modules',
      '.next*/**',
      'data',
      'lib/store/generated',
      'prisma/generated',
      'next-env.d.ts',
      'test-results',
      'playwright-report',
    ],
  },
  ...tseslint.configs.strictTypeChecked,
  {
    languageOptions: {
      parserOptions: {
        projectService: { allowDefaultProject: ['*.mjs'] },
        tsconfigRootDir: import.meta.dirname,
      },
    },
    rules: {
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      '@typescript-eslint/no-confusing-void-expression': 'off',
      '@typescript-eslint/no-unnecessary-condition': [
        'error',
        { allowConstantLoopConditions: 'only-allowed-literals' },
      ],
    },
  },
  {
    files: ['app/**/*.{ts,tsx}'],
    plugins: { '@next/next': next, 'react-hooks': reactHooks, 'jsx-a11y': jsxA11y },
    rules: {
      ...next.configs.recommended.rules,
      ...next.configs['core-web-vitals'].rules,
      ...reactHooks.configs.recommended.rules,
      ...jsxA11y.flatConfigs.recommended.rules,
    },
  },
  { files: ['**/*.{js,mjs}'], ...tseslint.configs.disableTypeChecked },
  ...Object.entries(forbidden).map(([folder, rooms]) => layer(folder, rooms)),
  // Behind the endpoints: a file that waits is worked on for whoever sent it; health and metrics show no shop's data.
  {
    files: ['app/load/_staging/**', 'app/health/**', 'app/metrics/**'],
    rules: { 'no-restricted-imports': 'off' },
  },
);
