import { overBecause } from './callers';
import { linkInForce } from './link-in-force';
import type { PeopleDesk } from './people-desk';
import type { Change, StoredSession, StoredToken } from './stored';

const why = {
  ...{ time: 'its time was over', idle: 'nobody acted', holder: 'its holder may no longer come in' },
  ahead: 'its times lie ahead of the clock, which was set back',
} as const;

/** A token that is over is listed for so long, ms; then only the journal tells of it. */
const tokensListedMs = 400 * 86_400_000;

/** What is done once a minute: writes when someone last acted or came in, and ends what is over. Wall time alone would not do: no request may come. */
export class PeopleTending {
  readonly #desk: PeopleDesk;
  readonly #sessions: Map<string, StoredSession>;
  readonly #tokens: Map<string, StoredToken>;

  constructor(desk: PeopleDesk) {
    this.#desk = desk;
    this.#sessions = new Map(desk.book.sessions);
    this.#tokens = new Map(desk.book.tokens);
  }

  tend(): void {
    this.#endOver();
    this.keepTimes();
  }

  /** Writes times that stand in memory only. */
  keepTimes(): void {
    const { book } = this.#desk;
    const changes: Change[] = [
      ...[...book.owed].map((digest): Change => ({ drop: 'session', digest })),
      ...[...book.sessions.values()]
        .filter((row) => (this.#sessions.get(row.digest)?.actedMs ?? row.begunMs) !== row.actedMs)
        .map((row): Change => ({ put: 'session', row })),
      ...[...book.tokens.values()]
        .filter((row) => (this.#tokens.get(row.digest)?.lastUsedMs ?? null) !== row.lastUsedMs)
        .map((row): Change => ({ put: 'token', row })),
    ];
    if (book.keep(changes) !== null) return;
    book.owed.clear();
    this.#sessions.clear();
    this.#tokens.clear();
    for (const row of book.sessions.values()) this.#sessions.set(row.digest, row);
    for (const row of book.tokens.values()) this.#tokens.set(row.digest, row);
  }

  #endOver(): void {
    const { book } = this.#desk;
    for (const session of [...book.sessions.values()]) {
      const over = overBecause(this.#desk, session);
      if (over === null) continue;
      const reason = `session of ${session.name} ended, ${why[over]}`;
      book.commit([{ drop: 'session', digest: session.digest }], {
        cause: 'sessionEnded',
        actor: null,
        station: session.station,
        reason,
      });
    }
    const nowMs = this.#desk.clock.wallMs();
    const gone = [
      ...[...book.links.values()]
        .filter((link) => !linkInForce(link, nowMs))
        .map(({ digest }): Change => ({ drop: 'link', digest })),
      ...[...book.tokens.values()]
        .filter(({ endsMs, withdrawnMs }) => nowMs - (withdrawnMs ?? endsMs) > tokensListedMs)
        .map(({ digest }): Change => ({ drop: 'token', digest })),
    ];
    book.keep(gone);
  }
}
