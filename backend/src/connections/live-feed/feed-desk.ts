import type { View, ViewRefusal } from '@ebbline/shared/contract/live-feed';
import type { LiveView } from '../../ports/live-view';
import type { FeedCounts } from '../../ports/web-counts';
import { FeedClient, type SendFrame } from './feed-client';
import { SharedView } from './shared-view';
import { viewKey, viewSchema } from './view-schema';

const malformed: ViewRefusal = {
  code: 'VIEW_MALFORMED',
  message: 'Ask for a hall, a loop, or the alarms, as the contract says.',
};

const ignore = (): void => undefined;
const uncounted: FeedCounts = { joined: ignore, left: ignore, sent: ignore, skipped: ignore };

/** Who looks at what. Clients are told apart by any value of their own, such as the id of a connection. */
export class FeedDesk {
  private readonly clients = new Map<string, FeedClient>();
  private readonly views = new Map<string, SharedView>();

  constructor(
    private readonly live: LiveView,
    private readonly counts: FeedCounts = uncounted,
  ) {}

  join(id: string, send: SendFrame, refuse: (refusal: ViewRefusal) => void = () => undefined): void {
    this.clients.set(id, new FeedClient(send, refuse, this.counts));
    this.counts.joined();
  }

  leave(id: string): void {
    this.turn(this.clients.get(id), null);
    if (this.clients.delete(id)) this.counts.left();
  }

  /** Null where the client is shown it from now on. */
  show(id: string, asked: unknown, monotonicMs: number): ViewRefusal | null {
    const checked = viewSchema.safeParse(asked);
    if (!checked.success) return malformed;
    const refusal = this.live.refusalOf(checked.data);
    const client = this.clients.get(id);
    if (refusal !== null || client === undefined) return refusal;
    this.turn(client, checked.data, monotonicMs);
    client.offer();
    return null;
  }

  /** One look at every view that someone looks at. */
  look(monotonicMs: number): void {
    for (const view of this.views.values()) view.look(monotonicMs);
    for (const client of this.clients.values()) client.offer();
  }

  private turn(client: FeedClient | undefined, view: View | null, monotonicMs = 0): void {
    const before = client?.view() ?? null;
    const next = view === null ? null : this.shared(view, monotonicMs);
    if (next !== null) next.viewers += 1;
    client?.show(next);
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
