import { afterAll, afterEach } from 'vitest';

export interface Stoppable {
  stop(): Promise<void> | void;
}

type Keep = <Thing extends Stoppable>(thing: Thing) => Thing;

/** `const keep = stopAfterAll(); const broker = keep(await startBroker());` — stopped in reverse order. */
export const stopAfterAll = (): Keep => keeper(afterAll);

/** The same after each test. */
export const stopAfterEach = (): Keep => keeper(afterEach);

function keeper(hook: (stop: () => Promise<void>) => void): Keep {
  const things: Stoppable[] = [];
  hook(async () => {
    for (let thing = things.pop(); thing !== undefined; thing = things.pop()) await thing.stop();
  });
  return (thing) => {
    things.push(thing);
    return thing;
  };
}
