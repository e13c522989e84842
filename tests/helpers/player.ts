import { connectClient, type TestBroker } from './broker';
import { until } from './until';

/** What a gateway would send, and when by its own clock. */
export interface PlayedMessage {
  readonly topic: string;
  readonly payload: string;
  readonly sourceMs: number;
  readonly retain?: boolean;
}

export interface Player {
  /** Publishes in the order given; resolves when the program has taken the last one. */
  play(messages: Iterable<PlayedMessage>): Promise<void>;
  published(): number;
  stop(): Promise<void>;
}

/** A broker keeps so many messages for a slow subscriber (mosquitto by itself 1,000), and then drops what comes further. */
const mostAhead = 600;
const batch = 200;

/**
 * Any recording through any broker, as fast as its reader takes it: never further ahead than a broker keeps.
 * `taken`: how many messages the reader has counted.
 */
export async function connectPlayer(broker: Pick<TestBroker, 'url'>, taken: () => Promise<number>): Promise<Player> {
  const { client, stop } = await connectClient(broker);
  let published = 0;
  const takenUpTo = async (count: number): Promise<void> => {
    let seen = 0;
    const enough = async (): Promise<boolean> => (seen = await taken()) >= count;
    await until(enough, { withinMs: 120_000 }).catch((cause: unknown) => {
      throw new Error(`${published} messages were published and only ${seen} were taken`, { cause });
    });
  };
  const send = async (messages: readonly PlayedMessage[]): Promise<void> => {
    const sent = messages.map(({ topic, payload, retain }) =>
      client.publishAsync(topic, payload, { qos: 1, retain: retain === true }),
    );
    published += messages.length;
    await Promise.all(sent);
    await takenUpTo(published - mostAhead + batch);
  };
  return {
    async play(messages) {
      let waiting: PlayedMessage[] = [];
      for (const message of messages) {
        waiting.push(message);
        if (waiting.length < batch) continue;
        await send(waiting);
        waiting = [];
      }
      await send(waiting);
      await takenUpTo(published);
    },
    published: () => published,
    stop,
  };
}
