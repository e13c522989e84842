import { CodedError } from '@ebbline/shared/errors/coded-error';
import type { Health } from '@ebbline/shared/contract/http-api';
import type { Environment } from '../connections/config/environment';
import { BoundedLog } from '../connections/logs/bounded-log';
import { HealthLog } from '../connections/logs/health-log';
import { secretHider } from '../connections/logs/hidden-secrets';
import { loggedIntake } from '../connections/logs/logged-intake';
import type { Clock } from '../ports/clock';
import type { MessageSink } from '../ports/message-sink';
import type { LogLevel } from '../ports/program-log';
import type { Ticker } from '../ports/ticker';
import type { ClosingStack } from './closing-stack';

export interface LogSinks {
  readonly say: (line: string) => void;
  readonly report: (fault: unknown) => void;
  /** Takes whole lines of the log; left out, there is none. */
  readonly print?: (line: string, level: LogLevel) => void;
}

export interface OpenLog {
  /** As before, without any secret. */
  readonly say: (line: string) => void;
  /** As before, and in the log. */
  readonly report: (fault: unknown) => void;
  readonly log: BoundedLog;
  readonly watchIntake: (sink: MessageSink) => MessageSink;
  /** Looks once a second. */
  readonly watchHealth: (reasons: () => Health['reasons']) => void;
}

const LOOK_MS = 1000;

/** From now on what happens to the program is told, bounded and without secrets. */
export function openLog(
  environment: Environment,
  { say, report, print = () => undefined }: LogSinks,
  clock: Clock,
  ticker: Ticker,
  closing: ClosingStack,
): OpenLog {
  const { mqttUrl, influxUrl, openId, log: form } = environment;
  const hide = secretHider([mqttUrl, influxUrl, openId?.clientSecret]);
  const log = new BoundedLog({ form, print, hide }, clock, ticker);
  closing.add(() => log.stop());
  return {
    say: (line) => say(hide(line)),
    report(fault) {
      const code = fault instanceof CodedError ? fault.code : 'UNEXPECTED';
      const message = (): string => (fault instanceof Error ? (fault.stack ?? fault.message) : String(fault));
      log.write({ level: 'error', room: 'program', code, message });
      report(fault);
    },
    log,
    watchIntake: (sink) => loggedIntake(sink, log),
    watchHealth(reasons) {
      const health = new HealthLog(log);
      const looking = ticker.every(LOOK_MS, () => health.look(reasons()));
      closing.add(() => looking.stop());
    },
  };
}
