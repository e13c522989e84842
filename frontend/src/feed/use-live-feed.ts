import type { Frame, View, ViewRefusal } from '@ebbline/shared/contract/live-feed';
import type { Ref, ShallowRef } from 'vue';
import { nextTick, readonly, ref, shallowReadonly, shallowRef } from 'vue';
import { awakeMs } from './awake-ms';
import type { FeedSocket } from './feed-socket';
import { openSocket } from './open-socket';
import { showsWished } from './shows-wished';

export interface LiveFeedOptions {
  /** Opens the connection. Default: socket.io to the server the page came from. */
  readonly open?: () => FeedSocket;
  /** What proves to the server that this page asks; asked for at every handshake. Default: nothing. */
  readonly csrf?: () => string | null;
  /** Monotonic time in ms that goes on while the machine sleeps. Default: `awakeMs`. */
  readonly monotonicMs?: () => number;
}

export type Link = 'connecting' | 'open' | 'closed';

export interface LiveFeed {
  /** Newest frame; null until the first one of this page. Replaced whole, never changed. */
  readonly frame: Readonly<ShallowRef<Frame | null>>;
  /** Monotonic ms at which the newest frame arrived. */
  readonly frameArrivedMs: Readonly<Ref<number | null>>;
  readonly link: Readonly<Ref<Link>>;
  /** Why what is wished is not shown; null once it is. */
  readonly refusal: Readonly<ShallowRef<ViewRefusal | null>>;
  /** How often the server has turned this page away, as one that is not or no longer signed in. */
  readonly turnedAway: Readonly<Ref<number>>;
  readonly monotonicMs: () => number;
  show(view: View): void;
  /** Asks once more for what was refused, if anything was: the site may have it by now. */
  readonly askAgain: () => void;
  /** Begins a new connection, as who is signed in by now. */
  connect(): void;
  close(): void;
}

/** Refusals that concern who asks, not what is asked. */
const ofEntry: ReadonlySet<string> = new Set(['SIGN_IN_NEEDED', 'RIGHT_MISSING', 'CSRF_MISSING']);

/** Refusals of what this site does not have. */
const notOfTheSite: ReadonlySet<string> = new Set<ViewRefusal['code']>([
  'VIEW_UNKNOWN_HALL',
  'VIEW_UNKNOWN_UNIT',
  'VIEW_UNKNOWN_POINT',
]);

/** Nobody stands at a wall or at a panel who would ask again for what was refused. ms */
const askAgainMs = 20_000;

/**
 * Takes frames one at a time: each is acknowledged after the screen has drawn it, and only then does the
 * server send the next, so that a slow screen gets newer frames and never a queue of old ones.
 * After a reconnect the wish is sent again and one whole frame comes back.
 */
export function useLiveFeed(options: LiveFeedOptions = {}): LiveFeed {
  const monotonicMs = options.monotonicMs ?? awakeMs;
  const frame = shallowRef<Frame | null>(null);
  const frameArrivedMs = ref<number | null>(null);
  const link = ref<Link>('connecting');
  const refusal = shallowRef<ViewRefusal | null>(null);
  const turnedAway = ref(0);
  let wish: View | null = null;
  let asking: ReturnType<typeof setInterval> | null = null;
  /** The alarms were asked for after the wish, in its place. */
  let stoodIn = false;

  function sendWish(): void {
    if (wish === null) return;
    stoodIn = false;
    socket.emit('show', wish);
  }
  function askAgain(): void {
    if (refusal.value !== null && link.value === 'open') sendWish();
  }
  function settle(): void {
    refusal.value = null;
    if (asking !== null) clearInterval(asking);
    asking = null;
  }

  const socket = (options.open ?? (() => openSocket(options.csrf ?? (() => null))))();
  socket.on('connect', () => {
    link.value = 'open';
    sendWish();
  });
  socket.on('disconnect', () => {
    link.value = 'closed';
  });
  socket.onTurnedAway(() => {
    link.value = 'closed';
    turnedAway.value += 1;
  });
  socket.on('refused', (why) => {
    if (ofEntry.has(why.code)) {
      turnedAway.value += 1;
      return;
    }
    refusal.value = why;
    asking ??= setInterval(askAgain, askAgainMs);
    // Without frames an address that the site does not have would look like a lost connection, with no alarm counted.
    if (!notOfTheSite.has(why.code)) return;
    stoodIn = true;
    socket.emit('show', { screen: 'alarms' });
  });
  socket.on('frame', (next, taken) => {
    frame.value = next;
    frameArrivedMs.value = monotonicMs();
    if (wish !== null && showsWished(next, wish)) {
      // The refusal was of an earlier wish and came late: what stands in for it would take the place of this one.
      if (stoodIn) sendWish();
      settle();
    }
    void nextTick(taken);
  });

  return {
    frame: shallowReadonly(frame),
    frameArrivedMs: readonly(frameArrivedMs),
    link: readonly(link),
    refusal: shallowReadonly(refusal),
    turnedAway: readonly(turnedAway),
    monotonicMs,
    show(view) {
      wish = view;
      settle();
      if (link.value === 'open') sendWish();
    },
    askAgain,
    connect() {
      socket.close();
      // A change of our own will is no loss: what is shown stays as fresh as it is.
      link.value = 'connecting';
      socket.connect();
    },
    close() {
      if (asking !== null) clearInterval(asking);
      asking = null;
      socket.close();
    },
  };
}
