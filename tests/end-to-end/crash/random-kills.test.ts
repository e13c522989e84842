import { performance } from 'node:perf_hooks';
import { expect, test } from 'vitest';
import { unitId } from '../../bench/bench-site';
import { startBroker } from '../../helpers/broker';
import { type Ebbline, startEbbline } from '../../helpers/ebbline';
import { stopAfterAll } from '../../helpers/stop-after';
import { temporaryFolder } from '../../helpers/temporary-folder';
import { until } from '../../helpers/until';
import { seededDraws } from '../../monte-carlo/draws';
import { dataFolder } from '../data-folder';
import { writeSite } from '../row-of-units';
import { Acknowledger } from './acknowledger';
import { expectAlarmsOfJournal, expectEachOnce, expectWholeJournal } from './nothing-lost';
import { isDeliveredAgain, startRememberingSender } from './sent-and-kept';

const isLong = process.env['EBBLINE_TEST_LONG'] === '1';
const { kills, units, alarmsAKill, leastConfirmed } = isLong
  ? { kills: 50, units: 1000, alarmsAKill: 16, leastConfirmed: 500 }
  : { kills: 3, units: 60, alarmsAKill: 12, leastConfirmed: 20 };
/** A kill comes so long after the chosen acknowledgement at most, so that it meets commits of history too. */
const mostDelayMs = 700;
/** What a kill may cost of history, by the program's promise. */
const promisedHoleS = 2;

const seed = Number(process.env['EBBLINE_TEST_SEED'] ?? Date.now() % 1_000_000);
const { uniform } = seededDraws(seed);
const upTo = (most: number): number => Math.floor(uniform() * (most + 1));
const keep = stopAfterAll();

test(`${kills} kills at random moments lose and double nothing of ${units} units (EBBLINE_TEST_SEED=${seed})`, async () => {
  const startedMs = performance.now();
  const broker = keep(await startBroker());
  const data = keep(await dataFolder());
  const files = keep(await temporaryFolder());
  const env = {
    EBBLINE_SITE: await writeSite(files.path, units),
    EBBLINE_MQTT_URL: broker.url,
    EBBLINE_SIMULATOR: 'off',
  };
  /** From then on it hears what is sent; what was sent while no program ran is no cost of the kill that follows. */
  let hearsFromMs = Number.NaN;
  const start = async (): Promise<Ebbline> => {
    const started = keep(await startEbbline({ data: data.path, env }));
    const hears = async () => (await started.health()).broker.state === 'connected';
    await until(hears, { everyMs: 20, what: 'a connection to the broker' });
    hearsFromMs = Date.now();
    return started;
  };
  const operator = new Acknowledger();
  let ebbline = await start();
  const sender = keep(await startRememberingSender(broker, units));
  const beganMs = Date.now();
  let worstBeforeKillS = 0;

  const watched = Array.from({ length: 6 }, (_, i) => Math.floor((i * units) / 6) + (i % 2));
  const raised = async (): Promise<string[]> =>
    (await ebbline.alarms())
      .filter(({ entry, state }) => entry === 'WATER-1' && /unacknowledged$/i.test(state))
      .map(({ id }) => id);

  for (let kill = 0; kill < kills; kill++) {
    const wet = Array.from({ length: alarmsAKill }, (_, i) => (kill * alarmsAKill + i) % units);
    sender.wet(wet);
    const ids = new Set(wet.map(unitId));
    const standing = async () => {
      const all = await raised();
      return all.filter((id) => ids.has(id.split(':')[0] ?? '')).length === alarmsAKill ? all : null;
    };
    const alarms = await until(standing, { everyMs: 100, what: 'the alarms of this turn' });

    const killAfter = 1 + upTo(alarmsAKill - 1);
    const delayMs = upTo(mostDelayMs);
    const target = operator.confirmed.length + killAfter;
    const victim = ebbline;
    const acknowledging = operator.acknowledgeAll(victim, alarms, 4);
    await until(() => operator.confirmed.length >= target, { what: 'confirmed acknowledgements' });
    let killedMs = Number.NaN;
    const killing = setTimeout(() => {
      killedMs = Date.now();
      victim.child.kill('SIGKILL');
    }, delayMs);
    await Promise.all([acknowledging, victim.exit]);
    clearTimeout(killing);
    const fromMs = Math.max(hearsFromMs, killedMs - 10_000);

    expectWholeJournal(data.path);
    ebbline = await start();
    for (const unit of watched.filter((one) => !isDeliveredAgain(one)))
      worstBeforeKillS = Math.max(
        worstBeforeKillS,
        await sender.longestHole(ebbline, unit, Math.max(beganMs, fromMs), killedMs),
      );
    expectEachOnce(await expectAlarmsOfJournal(ebbline), operator.told);
  }

  const endedMs = Date.now() - 10_000;
  const holeOf = (unit: number): Promise<number> => sender.longestHole(ebbline, unit, beganMs, endedMs);
  const delivered = watched.filter(isDeliveredAgain);
  const whole = async () => Math.max(...(await Promise.all(delivered.map(holeOf)))) <= promisedHoleS;
  await until(whole, { everyMs: 500, what: 'what was sent at least once in history' });
  const worstS = Math.max(...(await Promise.all(delivered.map(holeOf))));
  const rows = await expectAlarmsOfJournal(ebbline);
  expectEachOnce(rows, operator.told);
  const { length: confirmed } = operator.confirmed;
  const tookS = Math.round((performance.now() - startedMs) / 1000);
  process.stdout.write(
    `seed ${seed}: ${kills} kills, ${sender.messages()} messages, ${confirmed} acknowledgements confirmed, ${rows.length} rows of journal, ` +
      `longest hole ${worstS} s where delivered again, ${worstBeforeKillS} s before a kill where not; ${tookS} s\n`,
  );
  expect(confirmed).toBeGreaterThanOrEqual(leastConfirmed);
  expect(worstBeforeKillS).toBeLessThanOrEqual(promisedHoleS);
  expect(worstS).toBeLessThanOrEqual(promisedHoleS);
}, 3_600_000);
