import type { Frame, ViewRefusal } from '@ebbline/shared/contract/live-feed';
import type { FeedCounts } from '../../ports/web-counts';
import type { SharedView } from './shared-view';

/** Sends a frame; `taken` is called once the client has it. */
export type SendFrame = (frame: Frame, taken: () => void) => void;

/**
 * One client. One frame is in flight: until the client has taken it nothing further is sent, and what
 * changes meanwhile is only counted. So a slow client costs one frame of memory, and then gets the newest.
 */
export class FeedClient {
  private showing: SharedView | null = null;
  private offered = -1;
  private sent = -1;
  private sequence = 0;
  private inFlight = false;
  private refused = false;

  constructor(
    private readonly send: SendFrame,
    /** Told once when what is shown is gone with a new site file; frames come again should it come back. */
    private readonly refuse: (refusal: ViewRefusal) => void,
    private readonly counts: FeedCounts,
  ) {}

  view(): SharedView | null {
    return this.showing;
  }

  show(view: SharedView | null): void {
    this.showing = view;
    this.offered = -1;
    this.sent = -1;
  }

  /** Sends the newest frame if the client lacks it and has taken the one before. */
  offer(): void {
    const view = this.showing;
    if (view === null) return;
    const refusal = view.refusal();
    if (refusal !== null) {
      if (!this.refused) this.refuse(refusal);
      this.refused = true;
      return;
    }
    this.refused = false;
    if (this.offered !== view.version()) {
      if (this.offered !== this.sent) this.counts.skipped();
      this.offered = view.version();
      this.sequence += 1;
    }
    if (this.inFlight || this.sent === this.offered) return;
    this.inFlight = true;
    this.sent = this.offered;
    this.counts.sent();
    this.send({ ...view.frame(), sequence: this.sequence }, () => {
      this.inFlight = false;
      this.offer();
    });
  }
}
