/**
 * What `GET /api/energy` costs: days read from history, days added up and kept, and kept days told again, built as it ships. CPU time
 * of this process; compare ratios. What each figure means: README.md.
 *
 * node tests/bench/energy-query.bench.mjs [days of history]
 */
import { runBuilt } from './run-built.mjs';

await runBuilt('energy-query', Number(process.argv[2] ?? 5));
