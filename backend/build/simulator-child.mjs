/**
 * Where the simulator's process begins: it must end with the one that started it, even where that is
 * killed while this is still loading and the simulator itself does not listen yet.
 */
import { pathToFileURL } from 'node:url';

/** How long the simulator may take to say farewell by itself, ms. */
const PATIENCE_MS = 2500;

process.on('disconnect', () => {
  setTimeout(() => process.exit(0), PATIENCE_MS);
});

const [program] = process.argv.slice(2);
await import(pathToFileURL(program).href);
