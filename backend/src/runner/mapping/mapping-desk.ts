import { longestListeningSeconds, type Mapping } from '@ebbline/shared/contract/mapping';
import { fail, ok } from '@ebbline/shared/errors/result';
import { isTopicFilter } from '../../access/topic-filter';
import { placeKey } from '../../evaluation/mapping/mapped-site';
import { pathText } from '../../evaluation/mapping/heard-place';
import { rankPlace } from '../../evaluation/mapping/rank-place';
import { settleClaims, type RankedPlace } from '../../evaluation/mapping/settle-claims';
import type { CompiledSite } from '../../evaluation/site/compiled-site';
import type { Listener } from '../../ports/listener';
import type { MappingDesk } from '../../ports/mapping-desk';
import type { Ticker } from '../../ports/ticker';
import { untilOthersRan, type Pause } from '../performance/read-steps';
import type { ValueOf } from './known-series';
import { Listening } from './listening';
import { toHeardPlace } from './to-heard-place';

export interface MappingDeskParts {
  readonly site: () => CompiledSite;
  readonly valueOf: ValueOf;
  readonly listener: Listener;
  /** Under which the program publishes, as a topic filter; null: nowhere. */
  readonly ownTopics: string | null;
  readonly ticker: Ticker;
  readonly wallMs: () => number;
  readonly pause?: Pause;
}

/** How often the newest numbers are kept as a moment of the series, ms. */
const momentMs = 5000;
/** Where nobody asks for so long, nobody needs it. ms */
const forgottenMs = 180_000;
/** What was worked out is good for so long, ms. */
const freshMs = 3000;
/** So many places are ranked between two pauses. */
const atOnce = 15;

/** Listens beside the intake, for a time that ends by itself, and ranks what the places could be. Changes nothing. */
export class RunnerMappingDesk implements MappingDesk {
  private listening: Listening | null = null;
  private askedMs = 0;
  private running: { stop(): void } | null = null;
  private worked: {
    readonly unit: string | null;
    readonly atMs: number;
    readonly ranked: Promise<readonly RankedPlace[]>;
  } | null = null;

  constructor(private readonly parts: MappingDeskParts) {}

  async mapping(unit: string | null): ReturnType<MappingDesk['mapping']> {
    const site = this.parts.site();
    const chosen = site.units.find(({ id }) => id === unit);
    if (unit !== null && chosen === undefined)
      return fail({ code: 'UNIT_UNKNOWN', message: 'The site has no unit of this id; /api/units lists them.' });
    const nowMs = this.parts.wallMs();
    this.askedMs = nowMs;
    const { listening } = this;
    const time = new Date(nowMs).toISOString();
    if (listening === null)
      return ok({ time, listening: null, messages: 0, notLookedAt: 0, leftOut: 0, mapped: 0, places: [] });
    if (this.worked === null || this.worked.unit !== unit || nowMs - this.worked.atMs > freshMs) {
      const hall = chosen === undefined ? null : (site.halls[chosen.hall]?.id ?? null);
      this.worked = { unit, atMs: nowMs, ranked: this.rank(listening, unit, hall) };
    }
    const ranked = await this.worked.ranked;
    const mapped = listening.mapped();
    return ok({
      time,
      listening: this.told(listening),
      ...{ messages: listening.messages, notLookedAt: listening.notLookedAt, leftOut: listening.places.leftOut() },
      mapped: mapped.holders.reduce((sum, { topicOf }) => sum + topicOf.size, 0),
      places: ranked.map(toHeardPlace),
    });
  }

  listen(...[filter, actor]: Parameters<MappingDesk['listen']>): ReturnType<MappingDesk['listen']> {
    const topic = filter.trim();
    if (!isTopicFilter(topic) || topic.startsWith('$'))
      return fail({
        code: 'FILTER_MALFORMED',
        message: 'Not an MQTT topic filter; give one such as works/# or works/+/status.',
      });
    const other = this.listening;
    if (other !== null && !other.over && other.by !== actor.name)
      return fail({
        code: 'LISTENING_ALREADY',
        message: `${other.by} listens to ${other.filter}; wait until that is over, or have it ended.`,
      });
    const { listener, ticker, wallMs, site, ownTopics } = this.parts;
    const nowMs = wallMs();
    const untilMs = nowMs + longestListeningSeconds * 1000;
    const listening = new Listening(topic, actor.name, nowMs, untilMs, site, ownTopics);
    [this.listening, this.askedMs, this.worked] = [listening, nowMs, null];
    listener.listen(topic, (where, payload) => listening.hear(where, payload, wallMs()));
    this.running?.stop();
    this.running = ticker.every(momentMs, () => this.moment());
    return ok(null);
  }

  async stop(): Promise<void> {
    this.running?.stop();
    this.running = null;
    if (this.listening !== null) this.listening.over = true;
    await this.parts.listener.stop();
  }

  private moment(): void {
    const { listening } = this;
    if (listening === null || listening.over) return;
    const nowMs = this.parts.wallMs();
    listening.moment(this.parts.valueOf);
    if (nowMs >= listening.untilMs || nowMs - this.askedMs > forgottenMs) void this.stop();
  }

  private async rank(listening: Listening, unit: string | null, hall: string | null): Promise<readonly RankedPlace[]> {
    const { pause = untilOthersRan } = this.parts;
    const site = listening.mapped();
    const known = listening.knownSeries();
    const free = listening.places.list().filter(({ topic, path }) => !site.taken.has(placeKey(topic, path)));
    const ranked: RankedPlace[] = [];
    for (const place of free) {
      ranked.push({ place, proposals: rankPlace(place, site, known, { unit, hall }) });
      if (ranked.length % atOnce === 0) await pause();
    }
    const best = ({ proposals }: RankedPlace): number => proposals[0]?.score ?? 0;
    return [...settleClaims(ranked, ({ topic, path }) => `${topic} ${pathText(path)}`.trim())].sort(
      (a, b) => best(b) - best(a),
    );
  }

  private told({ filter, by, sinceMs, untilMs, over }: Listening): Mapping['listening'] {
    const [since, until] = [sinceMs, untilMs].map((ms) => new Date(ms).toISOString()) as [string, string];
    return { filter, by, since, until, over, trouble: over ? null : this.parts.listener.trouble() };
  }
}
