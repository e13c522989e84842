import { type ChildProcess, fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const entry = fileURLToPath(new URL('./run.mjs', import.meta.url));

export interface Child {
  readonly process: ChildProcess;
  stop(): Promise<void>;
}

/** A part of the bench in a process of its own. */
export function startChild(part: 'publisher' | 'bare-subscriber', args: readonly string[]): Child {
  const child = fork(entry, [part, ...args], { stdio: ['ignore', 'inherit', 'inherit', 'ipc'] });
  return {
    process: child,
    stop: () =>
      new Promise((resolve) => {
        child.once('exit', () => resolve());
        if (child.exitCode === null) child.disconnect();
        else resolve();
      }),
  };
}

/** The next message of a child. */
export function nextMessage<Message>(child: Child): Promise<Message> {
  return new Promise((resolve, reject) => {
    child.process.once('message', (message) => resolve(message as Message));
    child.process.once('exit', (code) => reject(new Error(`a part of the bench ended with code ${code ?? 'none'}`)));
  });
}
