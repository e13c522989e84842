import { watch } from 'vue';
import type { LiveFeed } from '../feed/use-live-feed';
import { renewSession, useSession } from './use-session';

/** Between two tries of a page that may look and was turned away all the same. ms */
const againMs = 3000;

/** Connects the feed while this page may look, anew when another session begins, and not at all while it may not. */
export function joinFeed(feed: LiveFeed): void {
  const { session, mayLook } = useSession();
  watch(
    [mayLook, () => session.value?.csrf ?? null],
    ([may]) => {
      if (may === null) return;
      if (may) feed.connect();
      else feed.close();
    },
    { immediate: true },
  );
  let waiting = false;
  watch(feed.turnedAway, () => {
    void renewSession();
    if (waiting) return;
    waiting = true;
    setTimeout(() => {
      waiting = false;
      if (mayLook.value === true && feed.link.value === 'closed') feed.connect();
    }, againMs);
  });
}
