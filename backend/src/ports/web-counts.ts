/** Requests that were answered: by the template of their route, never by what a client asked for, and by class of status. */
export interface RequestCounts {
  count(route: string, status: number, seconds: number): void;
}

/** What the live feed sends. */
export interface FeedCounts {
  joined(): void;
  left(): void;
  sent(): void;
  /** A change that a slow client never saw, as a newer one took its place. */
  skipped(): void;
}

export const REQUEST_COUNTS = Symbol('RequestCounts');
export const FEED_COUNTS = Symbol('FeedCounts');
