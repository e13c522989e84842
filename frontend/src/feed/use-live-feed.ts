import type { Frame, View, ViewRefusal } from '@ebbline/shared/contract/live-feed';
import type { Ref, ShallowRef } from 'vue';
import { nextTick, readonly, ref, shallowReadonly, shallowRef } from 'vue';
import type { FeedSocket } from './feed-socket';
import { openSocket } from './open-socket';

export interface LiveFeedOptions {
  /** Opens the connection. Default: socket.io to the server the page came from. */
  readonly open?: () => FeedSocket;
  /** Monotonic time in ms. Default: `performance.now()`. */
  readonly monotonicMs?: () => number;
}

export type Link = 'connecting' | 'open' | 'closed';

export interface LiveFeed {
  /** Newest frame; null until the first one of this page. Replaced whole, never changed. */
  readonly frame: Readonly<ShallowRef<Frame | null>>;
  /** Monotonic ms at which the newest frame arrived. */
  readonly frameArrivedMs: Readonly<Ref<number | null>>;
  readonly link: Readonly<Ref<Link>>;
  readonly refusal: Readonly<ShallowRef<ViewRefusal | null>>;
  readonly monotonicMs: () => number;
  show(view: View): void;
  close(): void;
}

/**
 * Takes frames one at a time: each is acknowledged after the screen has drawn it, and only then does the
 * server send the next, so that a slow screen gets newer frames and never a queue of old ones.
 * After a reconnect the wish is sent again and one whole frame comes back.
 */
export function useLiveFeed(options: LiveFeedOptions = {}): LiveFeed {
  const monotonicMs = options.monotonicMs ?? (() => performance.now());
  const frame = shallowRef<Frame | null>(null);
  const frameArrivedMs = ref<number | null>(null);
  const link = ref<Link>('connecting');
  const refusal = shallowRef<ViewRefusal | null>(null);
  let wish: View | null = null;

  const socket = (options.open ?? openSocket)();
  socket.on('connect', () => {
    link.value = 'open';
    if (wish !== null) socket.emit('show', wish);
  });
  socket.on('disconnect', () => {
    link.value = 'closed';
  });
  socket.on('refused', (why) => {
    refusal.value = why;
  });
  socket.on('frame', (next, taken) => {
    frame.value = next;
    frameArrivedMs.value = monotonicMs();
    void nextTick(taken);
  });

  return {
    frame: shallowReadonly(frame),
    frameArrivedMs: readonly(frameArrivedMs),
    link: readonly(link),
    refusal: shallowReadonly(refusal),
    monotonicMs,
    show(view) {
      wish = view;
      refusal.value = null;
      if (link.value === 'open') socket.emit('show', view);
    },
    close: () => void socket.close(),
  };
}
