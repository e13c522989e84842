import type { MqttClient } from 'mqtt';
import { subscribeAll, unsubscribeAll } from './subscribe-all';

/** How soon a broker is asked again for what it refused, ms: its rights are changed there, and it tells nobody. */
const ASK_AGAIN_MS = 60_000;

/** The topics that are to be heard, and which of them the broker does not let us hear. */
export class WantedTopics {
  private client: MqttClient | null = null;
  private refused: readonly string[] = [];
  private again: NodeJS.Timeout | null = null;

  constructor(private wanted: readonly string[]) {}

  /** Null where all that is wanted is heard, as far as was asked. */
  trouble(): string | null {
    const [first] = this.refused;
    if (first === undefined) return null;
    return `the broker refused ${this.refused.length} of ${this.wanted.length} subscriptions, such as ${first}; let this user read them`;
  }

  /** On a new connection everything is asked for. */
  async hearOn(client: MqttClient): Promise<void> {
    this.leave();
    this.client = client;
    await this.ask(client, this.wanted);
  }

  /** Others are wanted from now on: first new and refused ones are asked for, then those let go that are wanted no more. */
  async follow(subscriptions: readonly string[]): Promise<void> {
    const before = new Set(this.wanted);
    const now = new Set(subscriptions);
    this.wanted = subscriptions;
    const refused = new Set(this.refused);
    this.refused = this.refused.filter((filter) => now.has(filter));
    const { client } = this;
    // One that connects anew asks for all that is wanted; what its session still has besides is counted as unknown.
    if (client?.connected !== true) return;
    await this.ask(
      client,
      subscriptions.filter((filter) => !before.has(filter) || refused.has(filter)),
    );
    await unsubscribeAll(
      client,
      [...before].filter((filter) => !now.has(filter)),
    );
  }

  /** The connection is gone, and with it what the broker said of it. */
  leave(): void {
    if (this.again !== null) clearTimeout(this.again);
    this.again = null;
    this.client = null;
    this.refused = [];
  }

  private async ask(client: MqttClient, filters: readonly string[]): Promise<void> {
    const refused = await subscribeAll(client, filters);
    if (this.client !== client || !client.connected) return;
    const [asked, wanted] = [new Set(filters), new Set(this.wanted)];
    this.refused = [...this.refused.filter((filter) => !asked.has(filter)), ...refused].filter((one) =>
      wanted.has(one),
    );
    if (this.again !== null) clearTimeout(this.again);
    this.again = null;
    if (this.refused.length > 0) this.again = setTimeout(() => void this.ask(client, this.refused), ASK_AGAIN_MS);
  }
}
