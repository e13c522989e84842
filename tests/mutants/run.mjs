import { spawn } from 'node:child_process';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';

// Usage: npm run test:mutants [-- id …]. Plants one fault after the other; each must turn a test red.

const here = dirname(fileURLToPath(import.meta.url));
const vitest = join(dirname(createRequire(import.meta.url).resolve('vitest/package.json')), 'vitest.mjs');
const { module } = await runnerImport(join(here, 'mutants.ts'));
const { mutants, fallbackTests } = module;

const asked = process.argv.slice(2);
const chosen = asked.length === 0 ? mutants : mutants.filter(({ id }) => asked.includes(id));
if (chosen.length === 0 || chosen.length < asked.length) {
  console.error(`known mutants: ${mutants.map(({ id }) => id).join(', ')}`);
  process.exit(2);
}

/** Runs tests with one fault, or with none (''). Tells what vitest counted, or null where it could not run. */
async function runTests(id, tests) {
  const folder = await mkdtemp(join(tmpdir(), 'ebbline-mutant-'));
  const report = join(folder, 'report.json');
  const child = spawn(
    process.execPath,
    [
      vitest,
      'run',
      '--config',
      join(here, 'vitest.config.ts'),
      '--configLoader',
      'runner',
      ...(id === '' ? [] : ['--bail', '1']),
      '--reporter',
      'json',
      '--outputFile',
      report,
      ...tests,
    ],
    { cwd: join(here, '..'), env: { ...process.env, EBBLINE_MUTANT: id }, stdio: ['ignore', 'ignore', 'pipe'] },
  );
  let said = '';
  child.stderr.on('data', (chunk) => (said = (said + chunk).slice(-2000)));
  await new Promise((resolve) => child.once('close', resolve));
  try {
    const { numPassedTests, numFailedTests, testResults } = JSON.parse(await readFile(report, 'utf8'));
    const red = testResults.flatMap(({ assertionResults }) => assertionResults).find((one) => one.status === 'failed');
    return { passed: numPassedTests, failed: numFailedTests, red: red?.fullName ?? null, said };
  } catch {
    return { passed: 0, failed: 0, red: null, said };
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

const startedMs = performance.now();
const all = [...new Set(chosen.flatMap(({ tests }) => tests))];
console.log(`first without any fault: ${all.join(' ')}`);
const sound = await runTests('', all);
if (sound.failed > 0 || sound.passed === 0) {
  console.error(`the tests are red as it is, so they prove nothing: ${sound.red ?? sound.said}`);
  process.exit(1);
}

const rows = [];
for (const { id, tests } of chosen) {
  let run = await runTests(id, tests);
  if (run.failed === 0 && run.passed > 0) run = await runTests(id, fallbackTests);
  const fate = run.failed > 0 ? 'killed' : run.passed > 0 ? 'SURVIVED' : 'NOT RUN';
  rows.push(fate);
  console.log(
    `${fate.padEnd(8)}  ${id.padEnd(36)}  ${(run.red ?? run.said.trim().split('\n').at(-1) ?? '').slice(0, 120)}`,
  );
}

const count = (fate) => rows.filter((one) => one === fate).length;
const seconds = Math.round((performance.now() - startedMs) / 1000);
console.log(
  `${rows.length} mutants: ${count('killed')} killed, ${count('SURVIVED')} survived, ${count('NOT RUN')} not run, in ${seconds} s`,
);
process.exitCode = count('killed') === rows.length ? 0 : 1;
