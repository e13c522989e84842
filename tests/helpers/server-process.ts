import { type ChildProcess, spawn } from 'node:child_process';

export interface ProcessOptions {
  readonly env?: NodeJS.ProcessEnv;
  readonly cwd?: string;
  /** A process group of its own, so that a signal can go to all of it, as Ctrl-C does. */
  readonly ownGroup?: boolean;
  readonly uid?: number;
  readonly gid?: number;
}

export interface ServerProcess {
  readonly child: ChildProcess;
  readonly pid: number;
  /** Everything it printed so far, both streams (the last 200,000 characters). */
  output(): string;
  /** Rejects as soon as the process has ended. */
  readonly ended: Promise<never>;
  /** Exit code, once it has ended; null where a signal ended it. */
  readonly exit: Promise<number | null>;
  /** TERM, then KILL if it stays; resolves when it is gone. */
  stop(): Promise<void>;
}

/** Starts a program of the test run's own and keeps hold of it by its process, never by name. */
export function startProcess(program: string, args: readonly string[], options: ProcessOptions = {}): ServerProcess {
  const child = spawn(program, [...args], {
    ...(options.cwd === undefined ? {} : { cwd: options.cwd }),
    ...(options.uid === undefined ? {} : { uid: options.uid }),
    ...(options.gid === undefined ? {} : { gid: options.gid }),
    env: options.env ?? process.env,
    detached: options.ownGroup === true,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let output = '';
  const keep = (chunk: Buffer): void => {
    output = (output + chunk.toString('utf8')).slice(-200_000);
  };
  child.stdout.on('data', keep);
  child.stderr.on('data', keep);
  const exit = new Promise<number | null>((resolve) => {
    child.once('close', resolve);
    child.once('error', () => resolve(null));
  });
  const ended = exit.then((code): never => {
    throw new Error(`${program} ended (code ${code}):\n${output.slice(-4000)}`);
  });
  ended.catch(() => undefined);
  return {
    child,
    pid: child.pid ?? 0,
    output: () => output,
    ended,
    exit,
    stop: async () => {
      if (child.exitCode === null && child.signalCode === null) child.kill('SIGTERM');
      const killer = setTimeout(() => child.kill('SIGKILL'), 60_000);
      await exit;
      clearTimeout(killer);
    },
  };
}
