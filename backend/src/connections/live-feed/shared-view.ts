import type { View, ViewRefusal } from '@ebbline/shared/contract/live-feed';
import type { FrameBody, LiveView, Watch } from '../../ports/live-view';

/** A screen that nothing is heard of for longer takes the program for gone; so a frame comes at least so often, ms. */
const AT_LEAST_EVERY_MS = 1000;

/** One view and all who look at it: looked at once, built once. */
export class SharedView {
  private readonly watch: Watch;
  private body: FrameBody | null = null;
  private bodyOf = -1;
  private changes = 0;
  private changedAtMs = Number.NEGATIVE_INFINITY;
  viewers = 0;
  /** Why it can't be shown any more: the site that is in force now has no such hall, unit or point. */
  refusal: ViewRefusal | null = null;

  constructor(
    private readonly view: View,
    private readonly live: LiveView,
  ) {
    this.watch = live.watch(view);
  }

  /** Looks whether what is shown has changed. */
  look(monotonicMs: number): void {
    this.refusal = this.live.refusalOf(this.view);
    if (this.refusal !== null) return;
    const changed = this.watch.changed();
    if (!changed && monotonicMs - this.changedAtMs < AT_LEAST_EVERY_MS) return;
    this.changes += 1;
    this.changedAtMs = monotonicMs;
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
