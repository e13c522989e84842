import type { Health } from '@ebbline/shared/contract/http-api';
import type { ProgramLog } from '../../ports/program-log';

type Reasons = Health['reasons'];

/** Tells each reason of health once when it comes, and once when it is over. */
export class HealthLog {
  private standing: ReadonlySet<string> = new Set();

  constructor(private readonly log: ProgramLog) {}

  look(reasons: Reasons): void {
    const now = new Set<string>();
    for (const { code, message, action } of reasons) {
      now.add(code);
      if (!this.standing.has(code)) this.tell('warning', code, () => `${message} ${action}`);
    }
    for (const code of this.standing) if (!now.has(code)) this.tell('info', code, () => 'Over.');
    this.standing = now;
  }

  private tell(level: 'warning' | 'info', code: string, message: () => string): void {
    this.log.write({ level, room: 'health', code, message });
  }
}
