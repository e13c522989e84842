import { CodedError } from '@ebbline/shared/errors/coded-error';
import type { InjectionKey } from 'vue';
import { inject } from 'vue';
import type { LiveFeed } from '../feed/use-live-feed';

export const liveFeedKey: InjectionKey<LiveFeed> = Symbol('live feed');

/** The one live feed of the page. Throws where `main.ts` (or a test) has not given one. */
export function theLiveFeed(): LiveFeed {
  const feed = inject(liveFeedKey, null);
  if (feed === null) throw new CodedError('NO_LIVE_FEED', 'no live feed was provided; provide one under liveFeedKey');
  return feed;
}
