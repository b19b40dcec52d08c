const swc = {
  jsc: {
    parser: { syntax: 'typescript', decorators: true },
    transform: { legacyDecorator: true, decoratorMetadata: true },
    target: 'es2023',
    keepClassNames: true,
  },
  module: { type: 'es6' },
  sourceMaps: 'inline',
};
const base = {
  rootDir: import.meta.dirname,
  testEnvironment: 'node',
  testEnvironmentOptions: { customExportConditions: ['source', 'node', 'node-addons'] },
  extensionsToTreatAsEsm: ['.ts'],
  transform: { '^.+\\.ts$': ['@swc/jest', swc] },
  modulePathIgnorePatterns: ['<rootDir>/dist/', '<rootDir>/.data/'],
};
const withDatabase = {
  ...base,
  globalSetup: '<rootDir>/tests/support/global-setup.mjs',
  globalTeardown: '<rootDir>/tests/support/global-teardown.mjs',
};

export default {
  // A loaded machine with a cold cache is no reason to fail.
  testTimeout: 60_000,
  projects: [
    { ...base, displayName: 'unit', testMatch: ['<rootDir>/{apps,libs,seed}/**/*.spec.ts'] },
    { ...withDatabase, displayName: 'integration', testMatch: ['<rootDir>/tests/integration/**/*.int-spec.ts'] },
    { ...withDatabase, displayName: 'e2e', testMatch: ['<rootDir>/tests/e2e/**/*.e2e-spec.ts'] },
    { ...withDatabase, displayName: 'browser', testMatch: ['<rootDir>/tests/browser/**/*.browser-spec.ts'] },
  ],
};
