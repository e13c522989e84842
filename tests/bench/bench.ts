import { cpus } from 'node:os';
import { launchMosquitto } from '../helpers/mosquitto';
import { probeRequirements } from '../helpers/probe-requirements';
import { pointsInAll } from './bench-points';
import { measure, type Measured } from './measure';
import { tell } from './tell';

const say = (line: string): void => void process.stdout.write(`${line}\n`);

/** Sustained: what is sent is taken, and a value still reaches a screen within two seconds. */
const sustained = (result: Measured): boolean => result.takenPerS >= 0.98 * result.units && result.latencyP99Ms < 2000;

/** A start of many units is behind at first; so long it may catch up, s. */
const warmUpS = (units: number): number => 10 + units / 150;

const steps = [2000, 3000, 4000, 5000, 7000, 10_000];

/** `npm run bench [-- quick]`: figures as they are, good or bad. Loopback only; ends by itself. */
export async function run(args: readonly string[]): Promise<void> {
  const { mosquitto } = await probeRequirements();
  if (mosquitto.path === null) throw new Error(`the bench needs mosquitto: ${mosquitto.bring}`);
  const quick = args.includes('quick');
  const broker = await launchMosquitto(mosquitto.path, {
    configuration: ['allow_anonymous true', 'max_queued_messages 100000'],
  });
  try {
    say(
      `Node ${process.version}, ${cpus().length} cores, ${cpus()[0]?.model ?? 'unknown'}; one message a unit a second over mosquitto`,
    );
    say('1. One run beside a bare mqtt.js subscriber with JSON.parse, store on, one Hall and one Loop screen');
    tell(await measure(broker, { units: 1000, warmUpS: quick ? 5 : 15, measureS: quick ? 15 : 60 }));
    say('2. The most units a second');
    let most = 0;
    for (const units of quick ? [2000] : steps) {
      const result = await measure(broker, { units, warmUpS: warmUpS(units), measureS: 20 });
      tell(result);
      if (!sustained(result)) break;
      most = units;
    }
    say(
      most === 0
        ? '  not even the first step was sustained'
        : `  sustained: ${most} units × ${pointsInAll} points a second`,
    );
  } finally {
    await broker.stop();
  }
}
