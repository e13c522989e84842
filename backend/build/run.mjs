/** Lock, build, start; and the way back in reverse order on Ctrl-C or SIGTERM. */
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ensureBuilt } from './ensure-built.mjs';
import { lockDataFolder } from './lock-data-folder.mjs';
import { backendPart, frontendPart, simulatorPart } from './parts.mjs';
import { dataFolder, projectRoot } from './paths.mjs';
import { removeOldBuilds } from './remove-old-builds.mjs';
import { startSimulator } from './start-simulator.mjs';
import { unfinishedRestore } from './unfinished-restore.mjs';
import { complain, print, say } from './voice.mjs';
import { whenParentEnds } from './when-parent-ends.mjs';

export async function run() {
  const data = dataFolder();
  const lock = lockDataFolder(data);
  if (!lock.ok) return fail([lock.message]);
  const unfinished = unfinishedRestore(data);
  if (unfinished !== null) return fail([unfinished]);
  const closing = [lock.release];
  const stop = stopOnSignal(closing);
  try {
    await start(data, closing);
    if (stop.asked()) await stop.now();
  } catch (error) {
    fail(error?.name === 'StartFault' ? error.lines : [error?.stack ?? String(error)]);
    await stop.now();
  }
}

async function start(data, closing) {
  const building = setTimeout(
    () => say('Building what is not built yet; this takes some seconds, once a version.'),
    300,
  );
  const [backend, frontend] = await Promise.all([
    ensureBuilt(backendPart(), data),
    ensureBuilt(frontendPart(), data),
  ]).finally(() => clearTimeout(building));
  const inUse = [backend, frontend];
  const { startBackend } = await import(pathToFileURL(join(backend, 'main.mjs')).href);
  const running = await startBackend({
    variables: process.env,
    workingFolder: process.cwd(),
    demoSiteFile: join(projectRoot, 'simulator', 'demo-site', 'site.yaml'),
    demoAlarmList: join(projectRoot, 'simulator', 'demo-site', 'alarm-list.yaml'),
    frontendFolder: frontend,
    historyWorker: pathToFileURL(join(backend, 'history-worker.mjs')),
    siteWorker: pathToFileURL(join(backend, 'site-worker.mjs')),
    say,
    // The log tells it.
    report: () => undefined,
    print,
  });
  closing.push(running.stop);
  if (running.simulator !== null) {
    const folder = await ensureBuilt(simulatorPart(), data);
    inUse.push(folder);
    closing.push(await startSimulator(join(folder, 'main.mjs'), running.simulator, { say, complain }));
    // First of all, or the gateways that end with the simulator would be judged as lost.
    closing.push(running.leavePlant);
  }
  removeOldBuilds(data, inUse);
  say(running.address, 'ADDRESS');
}

/**
 * One Ctrl-C may come twice at once, from the terminal and from npm; whoever means a second one takes
 * longer than this, ms.
 */
const SAME_SIGNAL_MS = 500;

/** The first signal ends everything in order; a second one ends it at once. */
function stopOnSignal(closing) {
  let askedAtMs = null;
  let ending = null;
  const now = () => (ending ??= closeAll(closing, () => askedAtMs !== null && say('Ended.', 'ENDED')));
  const ask = () => {
    if (askedAtMs === null) say('Ending: what has come is being written. Ctrl-C once more ends it at once.', 'ENDING');
    askedAtMs ??= performance.now();
    // Before everything is open, `run` closes what is, once it gets there.
    if (closing.length > 1) void now();
  };
  const onSignal = () => {
    if (askedAtMs !== null && performance.now() - askedAtMs > SAME_SIGNAL_MS) process.exit(1);
    ask();
  };
  process.on('SIGINT', onSignal);
  process.on('SIGTERM', onSignal);
  whenParentEnds(ask);
  return { asked: () => askedAtMs !== null, now };
}

async function closeAll(closing, ended) {
  while (closing.length > 0) {
    try {
      await closing.pop()();
    } catch (error) {
      fail([error?.stack ?? String(error)]);
    }
  }
  if (!process.exitCode) ended();
  process.exit();
}

function fail(lines) {
  for (const line of lines) complain(line);
  process.exitCode = 1;
}
