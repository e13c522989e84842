import { pointsInAll } from './bench-points';
import type { Measured } from './measure';

const say = (line: string): void => void process.stdout.write(`${line}\n`);
const digits = (value: number, n = 1): string => value.toFixed(n);

/** The figures of one run, as they are. */
export function tell(result: Measured): void {
  say(`  ${result.units} units × ${pointsInAll} points`);
  say(
    `    sent ${digits(result.sentPerS)}/s (sender at most ${digits(result.senderLateMs, 0)} ms late), taken ${digits(result.takenPerS)}/s; ${result.memoryNote}`,
  );
  say(
    `    CPU a message: backend ${digits(result.backendCpuUsPerMessage)} µs, bare subscriber ${digits(result.bareCpuUsPerMessage)} µs, ratio ${digits(result.backendCpuUsPerMessage / result.bareCpuUsPerMessage, 2)}`,
  );
  say(`    CPU of the whole backend: ${digits(result.backendCpuShare, 2)} cores`);
  say(
    `    message to socket: p50 ${digits(result.latencyP50Ms, 0)} ms, p99 ${digits(result.latencyP99Ms, 0)} ms; frames hall ${result.framesHall}, loop ${result.framesLoop}`,
  );
}
