import { availableParallelism } from 'node:os';
import vue from '@vitejs/plugin-vue';
import { defineConfig } from 'vitest/config';
import { ClosingLineReporter } from './helpers/closing-line-reporter';
import { NotRunReporter } from './helpers/not-run-reporter';
import { probeRequirements, requiredNames } from './helpers/probe-requirements';

// Dates must not pass by luck of where the test runs.
process.env['TZ'] = 'UTC';

// Probed once here; workers inherit the variable (helpers/requirements.ts reads it).
const requirements = await probeRequirements();
process.env['EBBLINE_TEST_FOUND'] = JSON.stringify(requirements);
requiredNames(process.env['EBBLINE_TEST_REQUIRE']);

const root = new URL('.', import.meta.url).pathname;
const vueComponents = () => vue();

/** `groupOrder`: groups run one after another, so that the whole program has the machine for itself. */
export default defineConfig({
  root,
  test: {
    // The runner leaves one core free, which is half of a machine with two.
    maxWorkers: availableParallelism(),
    reporters: [new NotRunReporter(requirements), 'default', new ClosingLineReporter()],
    projects: [
      {
        root,
        test: {
          name: 'unit',
          include: [
            'unit/{shared,backend,simulator}/**/*.test.ts',
            '{published-values,physical-sense,second-opinions,monte-carlo,alarm-lifecycle}/**/*.test.ts',
          ],
          execArgv: ['--expose-gc'],
          testTimeout: 120_000,
        },
      },
      {
        root,
        plugins: [vueComponents()],
        test: {
          name: 'screens',
          environment: 'happy-dom',
          include: ['{screens,unit/frontend}/**/*.test.ts'],
          testTimeout: 120_000,
        },
      },
      { root, test: { name: 'replay', include: ['replay/**/*.test.ts'], testTimeout: 600_000 } },
      {
        root,
        test: {
          name: 'integration',
          include: ['{integration,contract}/**/*.test.ts'],
          testTimeout: 600_000,
          hookTimeout: 600_000,
          sequence: { groupOrder: 1 },
        },
      },
      {
        root,
        test: {
          name: 'house-rules',
          include: ['house-rules/**/*.test.ts'],
          testTimeout: 600_000,
          sequence: { groupOrder: 2 },
        },
      },
      {
        root,
        test: {
          name: 'end-to-end',
          include: ['{end-to-end,open-data,stories}/**/*.test.ts'],
          globalSetup: ['end-to-end/build-once.ts'],
          fileParallelism: false,
          testTimeout: 600_000,
          hookTimeout: 600_000,
          sequence: { groupOrder: 3 },
        },
      },
    ],
  },
});
