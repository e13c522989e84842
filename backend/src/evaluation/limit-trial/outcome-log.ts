import type { Priority } from '@ebbline/shared/contract/alarm';

/** One time in alarm, ms. */
export interface Episode {
  readonly unit: string;
  readonly part: string | null;
  readonly fromMs: number;
  /** NaN while it goes on. */
  toMs: number;
  readonly priority: Priority | null;
  /** Value furthest beyond the limit; NaN: there is none. */
  worst: number;
  readonly limit: number;
}

/** So many episodes are told one by one; further ones are counted. */
const mostTold = 1000;
/** Three or more of one alarm within a minute: ANSI/ISA-18.2-2016 calls that chattering. */
const chatterMs = 60_000;

interface Course {
  before: number;
  last: number;
  chatters: boolean;
}

/** What one setting raised, of all units and parts of a trial. */
export class OutcomeLog {
  readonly episodes: Episode[] = [];
  raised = 0;
  chatteringTimes = 0;
  /** Times it would be told anew, each acknowledged as soon as it is told. */
  toldAgain = 0;
  /** How long after that it is told anew, ms, where the alarms of which is told now are so set; Infinity: not at all. */
  reAlarmAfterMs = Number.POSITIVE_INFINITY;
  private endedMs = 0;
  private longestMs = 0;
  private shortestMs = Number.POSITIVE_INFINITY;
  private readonly courses = new Map<string, Course>();
  private readonly open = new Set<Episode>();

  /** Told without an end. */
  begin(episode: Omit<Episode, 'toMs'>): Episode {
    const begun = { ...episode, toMs: Number.NaN };
    this.raised += 1;
    this.open.add(begun);
    if (this.episodes.length < mostTold) this.episodes.push(begun);
    this.followChatter(`${episode.unit}\n${episode.part ?? ''}`, episode.fromMs);
    return begun;
  }

  end(episode: Episode, atMs: number): void {
    episode.toMs = atMs;
    this.open.delete(episode);
    const lastedMs = atMs - episode.fromMs;
    // Not at the very moment at which it ends: then it is over.
    this.toldAgain += Math.max(0, Math.ceil(lastedMs / this.reAlarmAfterMs) - 1);
    this.endedMs += lastedMs;
    this.longestMs = Math.max(this.longestMs, lastedMs);
    this.shortestMs = Math.min(this.shortestMs, lastedMs);
  }

  get more(): number {
    return this.raised - this.episodes.length;
  }

  /** Nothing more comes of what is still open: it counts as long as it has lasted, and is told without an end. */
  settle(atMs: number): void {
    for (const { fromMs } of this.open) {
      this.toldAgain += Math.floor((atMs - fromMs) / this.reAlarmAfterMs);
      this.endedMs += atMs - fromMs;
      this.longestMs = Math.max(this.longestMs, atMs - fromMs);
    }
    this.open.clear();
  }

  /** Seconds in alarm, of what has ended or was settled; the shortest is of those that ended. */
  durations(): { readonly total: number; readonly longest: number; readonly shortest: number | null } {
    return {
      total: this.endedMs / 1000,
      longest: this.longestMs / 1000,
      shortest: Number.isFinite(this.shortestMs) ? this.shortestMs / 1000 : null,
    };
  }

  private followChatter(alarm: string, atMs: number): void {
    const course = this.courses.get(alarm) ?? { before: Number.NaN, last: Number.NaN, chatters: false };
    const chatters = atMs - course.before <= chatterMs;
    if (chatters && !course.chatters) this.chatteringTimes += 1;
    this.courses.set(alarm, { before: course.last, last: atMs, chatters });
  }
}

/** Keeps the value that lies furthest beyond the limit, on the side on which the first one lay. */
export function keepWorst(episode: Episode, value: number): void {
  if (Number.isNaN(value) || Number.isNaN(episode.limit)) return;
  if (Number.isNaN(episode.worst)) episode.worst = value;
  const isBelow = episode.worst < episode.limit;
  if (isBelow ? value < episode.worst : value > episode.worst) episode.worst = value;
}
