import { readdirSync, readFileSync } from 'node:fs';

interface Stat {
  readonly pid: number;
  readonly parent: number;
  readonly group: number;
  readonly cpuTicks: number;
}

/** proc_pid_stat(5): fields after the name in brackets; 4 = parent, 5 = group, 14 and 15 = CPU ticks. */
function stat(pid: number): Stat | null {
  try {
    const text = readFileSync(`/proc/${pid}/stat`, 'utf8');
    const fields = text.slice(text.lastIndexOf(')') + 2).split(' ');
    const field = (n: number): number => Number(fields[n - 3]);
    return { pid, parent: field(4), group: field(5), cpuTicks: field(14) + field(15) };
  } catch {
    return null;
  }
}

const all = (): Stat[] =>
  readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name))
    .flatMap((name) => stat(Number(name)) ?? []);

/** A process and everything below it. Linux only. */
export function processTree(root: number): number[] {
  const stats = all();
  const below = (pid: number): number[] =>
    stats.filter((s) => s.parent === pid).flatMap((s) => [s.pid, ...below(s.pid)]);
  return [root, ...below(root)];
}

export const processesOfGroup = (group: number): number[] =>
  all()
    .filter((s) => s.group === group)
    .map((s) => s.pid);

/** CPU used so far by a process and everything below it, all threads, ms. Ticks are 1/100 s (sysconf _SC_CLK_TCK on Linux). */
export const cpuOfTreeMs = (root: number): number =>
  processTree(root).reduce((sum, pid) => sum + (stat(pid)?.cpuTicks ?? 0) * 10, 0);
