import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';
import { probeRequirements } from '../helpers/probe-requirements';
import { planted } from './mutant';
import { mutants } from './mutants';

process.env['TZ'] = 'UTC';
process.env['EBBLINE_TEST_FOUND'] = JSON.stringify(await probeRequirements());

const projectRoot = fileURLToPath(new URL('../../', import.meta.url));

/** Plants the fault as the file is read, so that the tree stays as it is. */
function plant(id: string): Plugin {
  const mutant = mutants.find((one) => one.id === id);
  if (mutant === undefined) throw new Error(`there is no mutant ${id}`);
  const file = `${projectRoot}${mutant.file}`;
  return {
    name: 'plant-mutant',
    enforce: 'pre',
    load(path) {
      if (path.split('?')[0] !== file) return null;
      const source = planted(readFileSync(file, 'utf8'), mutant);
      if (source === null) throw new Error(`${mutant.file} does not hold exactly once: ${mutant.text}`);
      return source;
    },
  };
}

const id = process.env['EBBLINE_MUTANT'] ?? '';

/** The tests of the pure rooms, with one fault planted: `EBBLINE_MUTANT` names it. */
export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  plugins: id === '' ? [] : [plant(id)],
  test: {
    include: ['unit/{shared,backend}/**/*.test.ts', '{published-values,physical-sense,alarm-lifecycle}/**/*.test.ts'],
    exclude: ['physical-sense/simulator*/**'],
    execArgv: ['--expose-gc'],
    testTimeout: 60_000,
    // A changed source must be read anew.
    cache: false,
  },
});
