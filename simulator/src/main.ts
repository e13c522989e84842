import { performance } from 'node:perf_hooks';
import { readEnvironment } from './config/environment';
import { MqttPublisher } from './publish/mqtt-publisher';
import { Pace } from './publish/pace';
import { FleetSimulation } from './scenario/fleet-simulation';

const tickMs = 20;
const troubleEveryMs = 10_000;

const say = (line: string): void => void process.stdout.write(`simulator: ${line}\n`);

function start(): void {
  const environment = readEnvironment(process.env);
  if (!environment.ok) {
    for (const { message } of environment.fault) process.stderr.write(`simulator: ${message}\n`);
    process.exit(1);
  }
  const { mqttUrl, speed, seed } = environment.value;
  // taken together, before the plants settle: source times are those of the wall
  const originMs = performance.now();
  const fleet = new FleetSimulation({ seed, startMs: Date.now() });
  let troubleAt = -Infinity;
  const publisher = new MqttPublisher({
    url: mqttUrl,
    gateways: fleet.gateways,
    inOrder: speed > 1,
    onCommand(payload) {
      const outcome = fleet.command(payload);
      publisher.tellState({
        answer: outcome.ok ? { accepted: true } : { accepted: false, ...outcome.fault },
        active: fleet.activeFaults(),
      });
    },
    onTrouble(name, message) {
      if (performance.now() - troubleAt < troubleEveryMs) return;
      troubleAt = performance.now();
      say(`the broker cannot be reached (${name}: ${message || 'no answer'}); trying again`);
    },
  });
  const pace = new Pace(fleet, speed, performance, originMs);
  publisher.open();
  let active = -1;
  const timer = setInterval(() => {
    pace.runDue(
      (messages) => messages.forEach((message) => publisher.publish(message)),
      () => publisher.takes,
    );
    const faults = fleet.activeFaults();
    if (faults.length !== active && active !== -1) publisher.tellState({ active: faults });
    active = faults.length;
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
