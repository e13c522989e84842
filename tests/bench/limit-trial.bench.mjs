/**
 * What a limit trial costs over history of one unit at a second: on stored points beside the bare read of the same columns, and worked
 * out anew. Built as it ships; compare ratios. What each figure means: README.md.
 *
 * node tests/bench/limit-trial.bench.mjs [days of history]
 */
import { runBuilt } from './run-built.mjs';

await runBuilt('limit-trial', Number(process.argv[2] ?? 30));
