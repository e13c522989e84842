/**
 * What a past moment of a large hall costs: the moment, the hour before it, and the marks of the scale, each beside the bare reading of
 * the same rows, built as it ships. What each figure means: README.md.
 *
 * node [--cpu-prof] tests/bench/past-hall.bench.mjs [units]
 */
import { runBuilt } from './run-built.mjs';

await runBuilt('past-hall', Number(process.argv[2] ?? 200));
