import { connect, type MqttClient } from 'mqtt';
import { z } from 'zod';
import { demoStateSchema, type DemoCommand, type DemoState } from '@ebbline/shared/contract/demo-faults';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import { DemoDurations } from './demo-durations';
import { readTlsFiles, type TlsFiles } from './tls-files';
import type { DemoFault, DemoPlants } from '../../ports/demo-plants';

/** Outside the topics of the site: the intake never hears them. */
const commandTopic = 'ebbline-simulator/command';
const stateTopic = 'ebbline-simulator/state';
/** The simulator answers within a tick of its own; this is for a machine that is busy. */
const ANSWER_WITHIN_MS = 3000;

/** What the simulator says: its state, and beside it what it thought of the newest command. */
const toldSchema = demoStateSchema.extend({
  answer: z
    .object({
      request: z.string().nullable().optional(),
      accepted: z.boolean(),
      code: z.string().optional(),
      message: z.string().optional(),
    })
    .nullable()
    .optional(),
});
type Told = z.infer<typeof toldSchema>;

/** A line to the simulator of the demo site, over the same broker, apart from the intake. */
export class DemoPlantsLink implements DemoPlants {
  private readonly client: MqttClient;
  private readonly waiting = new Map<string, (told: Told) => void>();
  private readonly durations = new DemoDurations();
  private told: Told | null = null;
  private requests = 0;

  /**
   * @param url of the broker; may hold a credential, never printed
   * @param tlsFiles of a secured broker; what can't be read is told by the intake, which needs the same
   */
  constructor(
    url: string,
    private readonly clientId: string,
    tlsFiles: TlsFiles | null,
  ) {
    const material = tlsFiles === null ? null : readTlsFiles(tlsFiles);
    this.client = connect(url, {
      clientId: `${clientId}-demo`,
      clean: true,
      reconnectPeriod: 2000,
      queueQoSZero: false,
      ...(material?.ok === true ? material.value : {}),
    });
    this.client.on('connect', () => this.client.subscribe(stateTopic, { qos: 1 }));
    this.client.on('message', (_topic, payload) => this.hear(payload));
    // Whether there is a connection is told by whether the simulator is heard; the client tries again by itself.
    this.client.on('error', () => undefined);
  }

  state(): Result<DemoState, DemoFault> {
    return ok(this.stateWith(null));
  }

  async command(command: DemoCommand): Promise<Result<DemoState, DemoFault>> {
    if (!this.client.connected || this.told?.running !== true) return silent;
    const request = `${this.clientId}-${(this.requests += 1)}`;
    const answered = this.answerTo(request);
    const { id, kind, unit, branch, action, keys } = command;
    const order = { request, [kind]: id, unit, ...(branch === null ? {} : { branch }), action, ...keys };
    this.client.publish(commandTopic, JSON.stringify(order), { qos: 1 });
    const told = await answered;
    if (told === null) return silent;
    const answer = told.answer;
    if (answer?.accepted === true) return ok(this.stateWith(null));
    const message = answer?.message ?? 'the simulator gave no reason';
    return fail({ code: 'DEMO_COMMAND_REFUSED', message: `The simulator refused: ${message}.` });
  }

  async stop(): Promise<void> {
    await this.client.endAsync(true);
  }

  private hear(payload: Buffer): void {
    const told = readTold(payload);
    if (told === null) return;
    this.told = told;
    this.durations.hear(told.active, performance.now());
    const request = told.answer?.request;
    if (request !== undefined && request !== null) this.waiting.get(request)?.(told);
  }

  private answerTo(request: string): Promise<Told | null> {
    return new Promise((resolve) => {
      const give = (told: Told | null): void => {
        clearTimeout(timer);
        this.waiting.delete(request);
        resolve(told);
      };
      const timer = setTimeout(() => give(null), ANSWER_WITHIN_MS);
      this.waiting.set(request, give);
    });
  }

  private stateWith(refused: DemoState['refused']): DemoState {
    const told = this.told;
    if (told === null) return { running: false, units: [], kinds: [], active: [], refused };
    const { running, units, kinds, active } = told;
    return { running, units, kinds, active: this.durations.at(active, performance.now()), refused };
  }
}

const silent: Result<never, DemoFault> = fail({
  code: 'DEMO_SILENT',
  message: 'The simulator does not answer; look whether it runs (EBBLINE_SIMULATOR=on, or npm run simulator).',
});

function readTold(payload: Buffer): Told | null {
  try {
    const checked = toldSchema.safeParse(JSON.parse(payload.toString('utf8')));
    return checked.success ? checked.data : null;
  } catch {
    return null; // not JSON: not from our simulator, and nothing to be shown
  }
}
