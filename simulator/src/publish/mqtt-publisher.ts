import { offline, online, statusTopic, type SimulatedMessage } from '../payload/messages';
import { MqttLine } from './mqtt-line';
import { commandTopic, stateTopic } from './topics';

export interface PublisherSettings {
  readonly url: string;
  readonly gateways: readonly string[];
  /**
   * Sends all telemetry over one line, in order of time. Faster than life each line may run seconds of source time
   * ahead of the others, which no site does.
   */
  readonly inOrder: boolean;
  readonly onCommand: (payload: string) => void;
  /** What the broker keeps of the simulator once it is gone; null: nothing. */
  readonly farewell: string | null;
  readonly onTrouble: (name: string, message: string) => void;
}

/** The demo site's lines to the broker: one a gateway with its last will, and one for the building and the commands. */
export class MqttPublisher {
  private readonly lines = new Map<string, MqttLine>();
  private readonly building: MqttLine;
  private greeted = false;

  constructor(private readonly settings: PublisherSettings) {
    const { url, gateways, onTrouble } = settings;
    for (const gateway of gateways) {
      const topic = statusTopic(gateway);
      const greeting = { topic, payload: online };
      this.lines.set(
        gateway,
        new MqttLine({ url, name: gateway, greeting, lastWill: { topic, payload: offline }, onTrouble }),
      );
    }
    const lastWill = settings.farewell === null ? null : { topic: stateTopic, payload: settings.farewell };
    this.building = new MqttLine({ url, name: 'building', greeting: null, lastWill, onTrouble });
  }

  open(): void {
    for (const line of this.lines.values()) line.open();
    this.building.open({ topic: commandTopic, hear: (payload) => this.settings.onCommand(payload) });
  }

  /** In order: every gateway has greeted, and the broker takes what it is sent. Else each line sends what it can. */
  get takes(): boolean {
    if (!this.settings.inOrder) return true;
    this.greeted ||= [...this.lines.values()].every(({ connected }) => connected);
    return this.greeted && this.building.takes;
  }

  publish(message: SimulatedMessage): void {
    const line = message.gateway === null ? this.building : this.lines.get(message.gateway);
    if (line && message.gateway !== null && message.topic === statusTopic(message.gateway)) {
      // what the broker knows of a gateway comes from its line alone
      if (message.payload === offline) line.break();
      else line.open();
    } else (this.settings.inOrder ? this.building : line)?.send(message.topic, message.payload, message.retain);
  }

  /** The line on which the state is told is there. */
  get heard(): boolean {
    return this.building.connected;
  }

  tellState(state: unknown): void {
    this.building.send(stateTopic, JSON.stringify(state), true);
  }

  async close(): Promise<void> {
    await Promise.allSettled([...this.lines.values(), this.building].map((line) => line.close()));
  }
}
