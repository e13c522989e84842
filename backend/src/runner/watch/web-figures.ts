import { Histogram } from '@ebbline/shared/statistics/histogram';
import type { FeedCounts, RequestCounts } from '../../ports/web-counts';

const requestBoundsS = [0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10];

/** So many routes are told apart, whatever a caller hands over. */
const mostRoutes = 200;

/** Requests by route and class of status, and how long they took. */
export class RequestFigures implements RequestCounts {
  readonly seconds = new Histogram(requestBoundsS);
  private readonly routes = new Map<string, Map<string, number>>();

  count(route: string, status: number, seconds: number): void {
    this.seconds.observe(seconds);
    const known = this.routes.has(route) || this.routes.size < mostRoutes ? route : 'other';
    const byClass = this.routes.get(known) ?? new Map<string, number>();
    this.routes.set(known, byClass);
    const statusClass = status >= 100 && status < 600 ? `${Math.floor(status / 100)}xx` : 'other';
    byClass.set(statusClass, (byClass.get(statusClass) ?? 0) + 1);
  }

  rows(): readonly { readonly route: string; readonly statusClass: string; readonly count: number }[] {
    return [...this.routes].flatMap(([route, byClass]) =>
      [...byClass].map(([statusClass, count]) => ({ route, statusClass, count })),
    );
  }
}

/** Clients of the live feed, and what became of frames. */
export class FeedFigures implements FeedCounts {
  clients = 0;
  framesSent = 0;
  framesSkipped = 0;

  joined(): void {
    this.clients += 1;
  }

  left(): void {
    this.clients -= 1;
  }

  sent(): void {
    this.framesSent += 1;
  }

  skipped(): void {
    this.framesSkipped += 1;
  }
}
