/** The simulator in a process of its own, that ends with this one: its channel to us breaks when we do. */
import { fork } from 'node:child_process';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';

const begin = fileURLToPath(new URL('simulator-child.mjs', import.meta.url));

/** How long it may take to end by itself, ms. */
const PATIENCE_MS = 3000;
/** How long its first words are waited for, and how long it must then be quiet, ms: the address stands last. */
const FIRST_WORDS_MS = 60_000;
const QUIET_MS = 100;

/**
 * @param {string} program
 * @param {{ mqttUrl: string, siteFile: string }} setting
 * @returns {Promise<() => Promise<void>>} ends it
 */
export async function startSimulator(program, { mqttUrl, siteFile }, { say, complain }) {
  const env = { ...process.env, EBBLINE_MQTT_URL: mqttUrl, EBBLINE_SITE: siteFile };
  // A group of its own, so that Ctrl-C reaches it through us, in order.
  const stdio = ['ignore', 'pipe', 'pipe', 'ipc'];
  const child = fork(begin, [program], { env, execArgv: [], detached: true, stdio });
  let wanted = true;
  const ended = new Promise((resolve) => {
    child.once('error', (error) => resolve(say(`The simulator could not be started: ${error.message}`)));
    child.once('exit', (code, signal) => {
      if (wanted) say(`The simulator ended (${signal ?? code}); the rest runs on.`);
      resolve();
    });
  });
  createInterface({ input: child.stderr }).on('line', (line) => complain(line, 'SIMULATOR'));
  const lines = createInterface({ input: child.stdout });
  await firstWords(
    lines.on('line', (line) => say(line, 'SIMULATOR')),
    ended,
  );
  return async () => {
    wanted = false;
    if (child.connected) child.disconnect();
    const timer = setTimeout(() => child.kill('SIGKILL'), PATIENCE_MS);
    await ended;
    clearTimeout(timer);
  };
}

function firstWords(lines, ended) {
  return new Promise((resolve) => {
    let timer = setTimeout(resolve, FIRST_WORDS_MS);
    lines.on('line', () => {
      clearTimeout(timer);
      timer = setTimeout(resolve, QUIET_MS);
    });
    void ended.then(resolve);
  });
}
