import type { MqttClient } from 'mqtt';

/** So long a broker may take over our leaving, ms; what has to be written at the end of the program waits for it. */
const LEAVE_WITHIN_MS = 2000;

/**
 * Leaves a broker in order, after `farewell`. One that holds the connection and says nothing (stopped, or its machine gone)
 * would be waited for without end: its connection is broken. What is not acknowledged stays with it as after any loss.
 */
export async function endWithin(client: MqttClient, farewell: () => Promise<unknown> = nothing): Promise<void> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<'late'>((resolve) => {
    timer = setTimeout(() => resolve('late'), LEAVE_WITHIN_MS);
  });
  const leave = async (): Promise<void> => {
    const isOpen = client.connected;
    if (isOpen) await farewell().catch(ignoreWhileEnding);
    await client.endAsync(!isOpen).catch(ignoreWhileEnding);
  };
  const ended = await Promise.race([leave(), late]);
  clearTimeout(timer);
  if (ended !== 'late') return;
  client.stream.destroy();
  // Where the farewell is what hangs, the end has not begun yet.
  if (!client.disconnecting) client.end(true);
}

const nothing = (): Promise<void> => Promise.resolve();

/** A connection that breaks while it is being closed is closed: there is nothing left to be told. */
const ignoreWhileEnding = (): void => undefined;
