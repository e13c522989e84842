import { type ChildProcess, spawn } from 'node:child_process';

export interface ServerProcess {
  readonly child: ChildProcess;
  /** Everything it printed so far. */
  output(): string;
  /** Rejects as soon as the process has ended. */
  readonly ended: Promise<never>;
  /** TERM, then KILL if it stays; resolves when it is gone. */
  stop(): Promise<void>;
}

/** Starts a program of the test run's own and keeps hold of it by its process, never by name. */
export function startProcess(
  program: string,
  args: readonly string[],
  options: { readonly env?: NodeJS.ProcessEnv; readonly cwd?: string } = {},
): ServerProcess {
  const child = spawn(program, [...args], {
    cwd: options.cwd,
    env: options.env ?? process.env,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let output = '';
  const keep = (chunk: Buffer): void => {
    output = (output + chunk.toString('utf8')).slice(-200_000);
  };
  child.stdout.on('data', keep);
  child.stderr.on('data', keep);
  const gone = new Promise<number | null>((resolve) => {
    child.once('close', resolve);
    child.once('error', () => resolve(null));
  });
  const ended = gone.then((code): never => {
    throw new Error(`${program} ended (code ${code}):\n${output.slice(-4000)}`);
  });
  ended.catch(() => undefined);
  return {
    child,
    output: () => output,
    ended,
    stop: async () => {
      if (child.exitCode === null && child.signalCode === null) child.kill('SIGTERM');
      const killer = setTimeout(() => child.kill('SIGKILL'), 10_000);
      await gone;
      clearTimeout(killer);
    },
  };
}
