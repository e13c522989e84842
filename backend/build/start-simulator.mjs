/** The simulator in a process of its own, that ends with this one: its channel to us breaks when we do. */
import { fork } from 'node:child_process';

/** How long it may take to end by itself, ms. */
const PATIENCE_MS = 3000;

/**
 * @param {string} program
 * @param {{ mqttUrl: string, siteFile: string }} setting
 * @returns {Promise<() => Promise<void>>} ends it
 */
export async function startSimulator(program, { mqttUrl, siteFile }, say) {
  const env = { ...process.env, EBBLINE_MQTT_URL: mqttUrl, EBBLINE_SITE: siteFile };
  // A group of its own, so that Ctrl-C reaches it through us, in order.
  const child = fork(program, [], {
    env,
    execArgv: [],
    detached: true,
    stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
  });
  let wanted = true;
  const ended = new Promise((resolve) => {
    child.once('error', (error) => resolve(say(`The simulator could not be started: ${error.message}`)));
    child.once('exit', (code, signal) => {
      if (wanted) say(`The simulator ended (${signal ?? code}); the rest runs on.`);
      resolve();
    });
  });
  return async () => {
    wanted = false;
    if (child.connected) child.disconnect();
    const timer = setTimeout(() => child.kill('SIGKILL'), PATIENCE_MS);
    await ended;
    clearTimeout(timer);
  };
}
