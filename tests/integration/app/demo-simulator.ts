import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { connectClient } from '../../helpers/broker';
import { smallSiteFile } from './running-app';

const commandTopic = 'ebbline-simulator/command';
const stateTopic = 'ebbline-simulator/state';

export interface DemoSimulator {
  /** What it was told, oldest first. */
  readonly commands: Readonly<Record<string, unknown>>[];
  stop(): Promise<void>;
}

/** Speaks as the simulator does: one retained state, and an answer to each command that names the request. */
export async function startDemoSimulator(
  mqttUrl: string,
  answer: (command: Readonly<Record<string, unknown>>) => Readonly<Record<string, unknown>> | null,
): Promise<DemoSimulator> {
  const { client, stop } = await connectClient({ url: mqttUrl });
  const commands: Readonly<Record<string, unknown>>[] = [];
  const kind = {
    id: 'slowInLeak',
    title: 'Slow in-leak',
    kind: 'fault',
    about: 'Air comes in at a fitting.',
    units: ['m1'],
    needsBranch: false,
    choices: [],
  };
  const state = {
    running: true,
    refused: null,
    units: [{ id: 'm1', branches: ['r1', 'r2'] }],
    kinds: [kind],
    active: [],
  };
  const tell = (told: object): void => {
    client.publish(stateTopic, JSON.stringify({ ...state, ...told }), { qos: 1, retain: true });
  };
  client.on('message', (_topic, payload) => {
    const command = JSON.parse(payload.toString()) as Readonly<Record<string, unknown>>;
    commands.push(command);
    const said = answer(command);
    if (said !== null) tell({ answer: { request: command.request, ...said } });
  });
  await client.subscribeAsync(commandTopic);
  tell({});
  return { commands, stop };
}

/** The small site as a demo site, in a folder of the test's own. */
export async function demoSiteFile(folder: string): Promise<string> {
  const file = join(folder, 'demo-site.yaml');
  const text = await readFile(smallSiteFile, 'utf8');
  await writeFile(file, text.replace('altitude: 120 m', 'altitude: 120 m\n  demo: true'));
  return file;
}
