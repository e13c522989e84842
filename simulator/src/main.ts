import { readFileSync } from 'node:fs';
import { performance } from 'node:perf_hooks';
import { readEnvironment } from './config/environment';
import { readSchedule } from './config/read-schedule';
import { MqttPublisher } from './publish/mqtt-publisher';
import { Pace } from './publish/pace';
import { commandableOf } from './scenario/commandable';
import { demoFleet } from './scenario/demo-fleet';
import { FleetSimulation } from './scenario/fleet-simulation';
import type { ScheduledCommand } from './scenario/schedule';
import { goneState, StateTeller } from './scenario/state-teller';

const tickMs = 20;
const troubleEveryMs = 10_000;

const say = (line: string): void => void process.stdout.write(`simulator: ${line}\n`);

/** The schedule file's commands, or the end: a scenario that cannot run is not begun. */
function scheduleOf(path: string): readonly ScheduledCommand[] {
  const faults = (messages: readonly string[]): never => {
    for (const message of messages) process.stderr.write(`simulator: ${path}: ${message}\n`);
    process.exit(1);
  };
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch {
    return faults(['cannot be read; correct EBBLINE_SIMULATOR_SCHEDULE']);
  }
  const schedule = readSchedule(text, commandableOf(demoFleet));
  return schedule.ok ? schedule.value : faults(schedule.fault.map(({ message }) => message));
}

function start(): void {
  const environment = readEnvironment(process.env, (path) => readFileSync(path, 'utf8'));
  if (!environment.ok) {
    for (const { message } of environment.fault) process.stderr.write(`simulator: ${message}\n`);
    process.exit(1);
  }
  const { mqttUrl, speed, seed, scheduleFile } = environment.value;
  // taken together, before the plants settle: source times are those of the wall
  const originMs = performance.now();
  const startMs = Date.now();
  const schedule = scheduleFile === null ? [] : scheduleOf(scheduleFile);
  const fleet = new FleetSimulation({
    seed,
    startMs,
    schedule,
    onRefused: ({ code, message }) => say(`a scheduled command was refused (${code}): ${message}`),
  });
  let troubleAt = -Infinity;
  const publisher = new MqttPublisher({
    url: mqttUrl,
    gateways: fleet.gateways,
    inOrder: speed > 1,
    farewell: JSON.stringify(goneState),
    onCommand(payload) {
      teller.answer(payload, fleet.command(payload));
    },
    onTrouble(name, message) {
      if (performance.now() - troubleAt < troubleEveryMs) return;
      troubleAt = performance.now();
      say(`the broker cannot be reached (${name}: ${message || 'no answer'}); trying again`);
    },
  });
  const teller = new StateTeller(fleet, (state) => publisher.tellState(state));
  const pace = new Pace(fleet, speed, performance, originMs);
  publisher.open();
  const timer = setInterval(() => {
    pace.runDue(
      (messages) => messages.forEach((message) => publisher.publish(message)),
      () => publisher.takes,
    );
    if (publisher.heard) teller.look();
    else teller.again();
  }, tickMs);
  say(`demo site, ${fleet.gateways.length} gateways, seed ${seed}`);
  if (speed > 1) say(`${speed} times as fast as life: the backend needs EBBLINE_CLOCK=source`);

  let ending = false;
  const end = (): void => {
    if (ending) return;
    ending = true;
    clearInterval(timer);
    const giveUp = setTimeout(() => process.exit(0), 2000);
    void publisher.close().then(() => {
      clearTimeout(giveUp);
      process.exit(0);
    });
  };
  process.once('SIGINT', end);
  process.once('SIGTERM', end);
  process.once('disconnect', end);
}

start();
