import type { View, ViewRefusal } from '@ebbline/shared/contract/live-feed';
import type { LiveView } from '../../ports/live-view';
import type { FeedCounts } from '../../ports/web-counts';
import { AskBudget } from './ask-budget';
import { FeedClient, type SendFrame } from './feed-client';
import { SharedView } from './shared-view';
import { viewKey, viewSchema } from './view-schema';

const malformed: ViewRefusal = {
  code: 'VIEW_MALFORMED',
  message: 'Ask for a hall, a loop, or the alarms, as the contract says.',
};

const ignore = (): void => undefined;
const uncounted: FeedCounts = { joined: ignore, left: ignore, sent: ignore, skipped: ignore };

interface Seat {
  readonly client: FeedClient;
  readonly budget: AskBudget;
  /** The newest of what it asked for too soon; shown as soon as it may be. */
  wanted: View | null;
}

/** Who looks at what. Clients are told apart by any value of their own, such as the id of a connection. */
export class FeedDesk {
  private readonly seats = new Map<string, Seat>();
  private readonly views = new Map<string, SharedView>();

  constructor(
    private readonly live: LiveView,
    private readonly counts: FeedCounts = uncounted,
  ) {}

  join(id: string, send: SendFrame, refuse: (refusal: ViewRefusal) => void = () => undefined): void {
    const client = new FeedClient(send, refuse, this.counts);
    this.seats.set(id, { client, budget: new AskBudget(), wanted: null });
    this.counts.joined();
  }

  leave(id: string): void {
    const seat = this.seats.get(id);
    if (seat === undefined) return;
    this.turn(seat.client, null);
    this.seats.delete(id);
    this.counts.left();
  }

  /** Null where the client is shown it from now on, or as soon as its budget lets it. */
  show(id: string, asked: unknown, monotonicMs: number): ViewRefusal | null {
    const checked = viewSchema.safeParse(asked);
    if (!checked.success) return malformed;
    const refusal = this.live.refusalOf(checked.data);
    const seat = this.seats.get(id);
    if (refusal !== null || seat === undefined) return refusal;
    seat.wanted = checked.data;
    this.showWanted(seat, monotonicMs);
    return null;
  }

  /** One look at every view that someone looks at. */
  look(monotonicMs: number): void {
    for (const view of this.views.values()) view.look(monotonicMs);
    for (const seat of this.seats.values()) {
      this.showWanted(seat, monotonicMs);
      seat.client.offer();
    }
  }

  private showWanted(seat: Seat, monotonicMs: number): void {
    const { budget, client, wanted } = seat;
    if (wanted === null || !budget.mayAsk(monotonicMs)) return;
    seat.wanted = null;
    const view = this.shared(wanted, monotonicMs);
    budget.spend(view.paceMs(), monotonicMs);
    this.turn(client, view);
    client.offer();
  }

  private turn(client: FeedClient, next: SharedView | null): void {
    const before = client.view();
    if (next !== null) next.viewers += 1;
    client.show(next);
    if (before === null) return;
    before.viewers -= 1;
    if (before.viewers === 0) for (const [key, one] of this.views) if (one === before) this.views.delete(key);
  }

  private shared(view: View, monotonicMs: number): SharedView {
    const key = viewKey(view);
    const known = this.views.get(key) ?? new SharedView(view, this.live);
    this.views.set(key, known);
    // Whoever comes sees how it is now, not how it was at the last look.
    known.look(monotonicMs, true);
    return known;
  }
}
