import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { type FailpointName, failpointNames } from '../../../backend/src/ports/failpoint';
import { startBroker } from '../../helpers/broker';
import { type Ebbline, launchEbbline, startEbbline } from '../../helpers/ebbline';
import { stopAfterAll } from '../../helpers/stop-after';
import { temporaryFolder } from '../../helpers/temporary-folder';
import { until } from '../../helpers/until';
import { dataFolder } from '../data-folder';
import { writeSite } from '../row-of-units';
import { Acknowledger } from './acknowledger';
import { startFastPlant } from './fast-plant';
import { expectAlarmsOfJournal, expectEachOnce, expectWholeJournal } from './nothing-lost';

const units = 3;
const startMs = Date.UTC(2026, 0, 5, 6);
const keep = stopAfterAll();

/**
 * How the program comes past a place: by starting on an empty folder, under load, by a load that lets each stretch be sealed
 * before the next (since days of hours are needed; in calm also told again, as a day's energy is added up only when nothing of it is under
 * way), by a start after a seal that was cut
 * short, or by being told to end.
 */
type Way = 'start' | 'load' | 'paced' | 'calm' | 'leftover' | 'end';
interface Place {
  readonly way: Way;
  /** The count of `EBBLINE_TEST_FAILPOINT`. */
  readonly count?: number;
  /** Proved by every run; the others by the long form. */
  readonly short?: true;
}

/** Rows that are old enough to be sealed take a year: `tests/contract/journal-sealed-kill.test.ts` kills a process of its own there. */
type OfSealedRows = Extract<FailpointName, `journal-archive-${string}`>;
type Placed = Exclude<FailpointName, OfSealedRows>;
const isPlaced = (name: FailpointName): name is Placed => name in places;

const places: Readonly<Record<Placed, Place>> = {
  'layout-mid-commit': { way: 'start', short: true },
  'journal-mid-transaction': { way: 'load', count: 4 },
  'journal-before-commit': { way: 'load', count: 6, short: true },
  'journal-after-commit': { way: 'load', count: 7, short: true },
  'tail-before-commit': { way: 'load', count: 2 },
  'tail-after-commit': { way: 'load', count: 3 },
  'tail-before-acknowledgement': { way: 'load', count: 4, short: true },
  'sealed-file-announced': { way: 'load' },
  'sealed-file-before-rename': { way: 'load' },
  'sealed-file-after-rename': { way: 'load', count: 2, short: true },
  'seal-mid-hour': { way: 'load', short: true },
  'seal-mid-manifest': { way: 'load' },
  'seal-after-manifest': { way: 'load' },
  'fold-mid-day': { way: 'paced' },
  'retention-mid-manifest': { way: 'paced' },
  'deletion-mid-file': { way: 'leftover' },
  'memory-mid-write': { way: 'end' },
  'memory-before-rename': { way: 'end', short: true },
  'memory-after-rename': { way: 'end' },
  'energy-mid-write': { way: 'calm' },
  'energy-after-write': { way: 'calm' },
  'energy-mid-forget': { way: 'calm' },
};

const isLong = process.env['EBBLINE_TEST_LONG'] === '1';
const isChosen = (name: Placed): boolean => isLong || places[name].short === true;
const chosen = failpointNames.filter(isPlaced).filter(isChosen);
const settingOf = (name: Placed): string => `${name}:${places[name].count ?? 1}`;

const broker = keep(await startBroker());
const data = keep(await dataFolder());
const files = keep(await temporaryFolder());
const env = {
  EBBLINE_SITE: await writeSite(files.path, units),
  EBBLINE_MQTT_URL: broker.url,
  EBBLINE_SIMULATOR: 'off',
  EBBLINE_CLOCK: 'source',
};
const plant = keep(await startFastPlant(broker, units, startMs));
const operator = new Acknowledger();

let running: Ebbline | null = null;

async function start(setting: string): Promise<Ebbline> {
  await kill();
  const ebbline = keep(await startEbbline({ data: data.path, env: { ...env, EBBLINE_TEST_FAILPOINT: setting } }));
  running = ebbline;
  return ebbline;
}

async function kill(): Promise<void> {
  running?.child.kill('SIGKILL');
  await running?.exit;
  running = null;
}

async function acknowledgeRaised(ebbline: Ebbline): Promise<void> {
  const alarms = await ebbline.alarms().catch(() => []);
  const raised = alarms.filter(({ state }) => /unacknowledged$/i.test(state)).map(({ id }) => id);
  await operator.acknowledgeAll(ebbline, raised, 2);
}

const sealedHours = (): number => readdirSync(join(data.path, 'history/seconds')).length;

/**
 * Telemetry and acknowledgements, hour after hour of source time, until the program is gone: as fast as it is taken, or no faster than
 * hours are sealed, where days of them are needed; in calm what was told is told again.
 */
async function loadUntilGone(ebbline: Ebbline, way: 'load' | 'paced' | 'calm'): Promise<void> {
  let isGone = false;
  void ebbline.exit.then(() => (isGone = true));
  while (!isGone) {
    const before = sealedHours();
    await plant.stretch();
    await acknowledgeRaised(ebbline);
    if (way === 'load') continue;
    if (way === 'calm') await plant.tellAgain();
    await until(() => isGone || sealedHours() > before, { everyMs: 50, what: 'an hour that is sealed' });
  }
}

async function killedBy(name: Placed): Promise<void> {
  const setting = settingOf(name);
  const { way } = places[name];
  if (way === 'start' || way === 'leftover') {
    if (way === 'leftover') await killedBy('seal-mid-hour');
    await kill();
    const started = keep(launchEbbline({ data: data.path, env: { ...env, EBBLINE_TEST_FAILPOINT: setting } }));
    await started.exit;
    expect(started.child.signalCode).toBe('SIGKILL');
    return;
  }
  const ebbline = await start(setting);
  if (way !== 'end') await loadUntilGone(ebbline, way);
  else {
    await plant.stretch();
    await acknowledgeRaised(ebbline);
    ebbline.child.kill('SIGTERM');
    await ebbline.exit;
  }
  expect(ebbline.child.signalCode).toBe('SIGKILL');
}

test.for(chosen)('killed at %s, the program loses and doubles nothing', { timeout: 900_000 }, async (name) => {
  await killedBy(name);
  // Not armed with the next place yet: a slow machine comes past it while this one is looked at.
  const again = await start('');
  expectWholeJournal(data.path);
  if (/^(start|leftover|end)$/.test(places[name].way)) await plant.stretch();
  await plant.expectLatestKept(again, 4);
  expectEachOnce(await expectAlarmsOfJournal(again), operator.told);
  const troubles = (await again.health()).reasons.filter(({ code }) => /^(JOURNAL|HISTORY|MEMORY)_/.test(code));
  expect(troubles).toEqual([]);
});

test('every place is proved, with acknowledgements confirmed between the kills', async () => {
  await kill();
  const others = failpointNames.filter((name) => !name.startsWith('journal-archive-'));
  expect(Object.keys(places).sort()).toEqual([...others].sort());
  expect(operator.confirmed.length).toBeGreaterThan(chosen.length);
  process.stdout.write(`${chosen.length} failpoints, ${operator.confirmed.length} acknowledgements confirmed\n`);
});
