import type { View, ViewRefusal } from '@ebbline/shared/contract/live-feed';
import type { Change, FrameBody, LiveView, Watch } from '../../ports/live-view';

/** A screen that nothing is heard of for longer takes the program for gone; so a frame comes at least so often, ms. */
const AT_LEAST_EVERY_MS = 1000;
/** News come so much sooner than newer values: a flood of alarms in a large hall is no flood of frames. */
const NEWS_SOONER = 4;

/** One view and all who look at it: looked at once, built once. */
export class SharedView {
  private readonly watch: Watch;
  private body: FrameBody | null = null;
  private bodyOf = -1;
  private changes = 0;
  private changedAtMs = Number.NEGATIVE_INFINITY;
  /** What has changed since the newest frame and waits for its time. */
  private waits: Change = 'nothing';
  viewers = 0;

  constructor(
    private readonly view: View,
    private readonly live: LiveView,
  ) {
    this.watch = live.watch(view);
  }

  /**
   * Why it can't be shown any more: the site that is in force now has no such hall, unit or point. Asked anew each time, as a
   * client may take its frame between a new site file and the next look.
   */
  refusal(): ViewRefusal | null {
    return this.live.refusalOf(this.view);
  }

  /** How long after one frame the next may wait, ms. */
  paceMs(): number {
    return this.watch.paceMs();
  }

  /** Looks whether what is shown has changed. @param atOnce who comes does not wait for the next frame, unless one has just gone out */
  look(monotonicMs: number, atOnce = false): void {
    if (this.refusal() !== null) return;
    const change = this.watch.changed();
    if (change === 'news' || this.waits === 'nothing') this.waits = change;
    const sinceMs = monotonicMs - this.changedAtMs;
    const dueMs = { nothing: AT_LEAST_EVERY_MS, values: this.paceMs(), news: this.paceMs() / NEWS_SOONER };
    const isDue = sinceMs >= dueMs[atOnce && this.waits === 'values' ? 'news' : this.waits];
    if (!isDue) return;
    this.changes += 1;
    this.changedAtMs = monotonicMs;
    this.waits = 'nothing';
  }

  /** Counts up with every change. */
  version(): number {
    return this.changes;
  }

  /** The frame of the newest change, built when someone first asks for it. */
  frame(): FrameBody {
    if (this.body === null || this.bodyOf !== this.changes) {
      this.body = this.live.frame(this.view);
      this.bodyOf = this.changes;
    }
    return this.body;
  }
}
