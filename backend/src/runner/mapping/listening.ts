import { matchesTopic } from '../../access/topic-filter';
import { HeardPlaces } from '../../evaluation/mapping/heard-places';
import { mappedSite, placeKey, type MappedSite } from '../../evaluation/mapping/mapped-site';
import type { CompiledSite } from '../../evaluation/site/compiled-site';
import { KnownSeriesRing, type ValueOf } from './known-series';

/** So many messages a second are looked at: what is listened to must not take the time of what is judged. */
const lookedAtASecond = 300;
/** Topics that the program and its simulator always have: never those of a plant. */
const own = /^ebbline(?:-simulator)?\//;
/** So many bytes a second are looked at: large payloads cost by length, not by count. */
const bytesASecond = 1 << 20;

/** One time of listening: what was heard, and what the known points were at the same moments. */
export class Listening {
  readonly places: HeardPlaces;
  messages = 0;
  notLookedAt = 0;
  over = false;
  private second = Number.NaN;
  private inSecond = 0;
  private bytesInSecond = 0;
  private known: { readonly site: CompiledSite; readonly mapped: MappedSite; readonly ring: KnownSeriesRing };

  constructor(
    readonly filter: string,
    readonly by: string,
    readonly sinceMs: number,
    readonly untilMs: number,
    private readonly site: () => CompiledSite,
    /** Under which the program publishes its alarms, as a topic filter; null: nowhere. */
    private readonly ownTopics: string | null,
  ) {
    this.known = knownOf(site());
    this.places = new HeardPlaces((topic, path) => this.known.mapped.taken.has(placeKey(topic, path)));
  }

  hear(topic: string, payload: Uint8Array, nowMs: number): void {
    if (this.over || own.test(topic) || (this.ownTopics !== null && matchesTopic(this.ownTopics, topic))) return;
    this.messages += 1;
    const second = Math.floor(nowMs / 1000);
    if (second !== this.second) [this.second, this.inSecond, this.bytesInSecond] = [second, 0, 0];
    this.inSecond += 1;
    this.bytesInSecond += payload.length;
    if (this.inSecond > lookedAtASecond || this.bytesInSecond > bytesASecond) this.notLookedAt += 1;
    else this.places.hear(topic, payload, nowMs);
  }

  moment(valueOf: ValueOf): void {
    this.follow();
    this.places.moment();
    this.known.ring.moment(valueOf);
  }

  /** The site as it is now: a new site file takes places away from what maps to nothing. */
  mapped(): MappedSite {
    this.follow();
    return this.known.mapped;
  }

  knownSeries(): ReturnType<KnownSeriesRing['list']> {
    return this.known.ring.list();
  }

  private follow(): void {
    const site = this.site();
    if (site !== this.known.site) this.known = knownOf(site, this.known.ring.moments);
  }
}

const knownOf = (site: CompiledSite, moments = 0) => ({
  site,
  mapped: mappedSite(site),
  ring: new KnownSeriesRing(site, moments),
});
