import { launchInfluxd } from '../helpers/launch-influxd';
import { launchMosquitto } from '../helpers/mosquitto';
import { probeRequirements } from '../helpers/probe-requirements';
import { measure } from './measure';
import { tell } from './tell';

const say = (line: string): void => void process.stdout.write(`${line}\n`);
const database = 'quillmere';

/**
 * `npm run bench -- influx [units…]`: history in a real InfluxDB of this machine, which is there, then away at the same rate, so that rows
 * are put aside on the disk. Figures as they are; loopback only; ends by itself.
 */
export async function run(args: readonly string[]): Promise<void> {
  const { mosquitto, influxdb } = await probeRequirements();
  if (mosquitto.path === null) throw new Error(`the bench needs mosquitto: ${mosquitto.bring}`);
  if (influxdb.path === null) throw new Error(`this bench needs influxd: ${influxdb.bring}`);
  const broker = await launchMosquitto(mosquitto.path, {
    configuration: ['allow_anonymous true', 'max_queued_messages 100000'],
  });
  const influx = await launchInfluxd(influxdb.path);
  const env = { EBBLINE_INFLUX_URL: `${influx.url}/${database}` };
  try {
    for (const units of args.length === 0 ? [500, 1000, 2000] : args.map(Number)) {
      const plan = { units, warmUpS: 10 + units / 150, measureS: 30, env };
      say('InfluxDB there, on the same cores');
      tell(await measure(broker, plan));
      await influx.kill();
      say('InfluxDB away');
      tell(await measure(broker, plan));
      await influx.restart();
    }
  } finally {
    await influx.stop();
    await broker.stop();
  }
}
