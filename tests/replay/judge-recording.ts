import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import type { RawMessage } from '../../backend/src/evaluation/pipeline/inputs';
import type { CountingPipeline } from '../../backend/src/evaluation/pipeline/create-pipeline';
import type { CompiledSite } from '../../backend/src/evaluation/site/compiled-site';
import type { AlarmTransition } from '../../backend/src/evaluation/pipeline/outputs';
import { createPipeline } from '../../backend/src/evaluation/pipeline/create-pipeline';
import type { SimulatedMessage } from '../../simulator/src/payload/messages';
import { type Recording, recordTelemetry } from '../../simulator/src/scenario/record-telemetry';
import { compiledOrThrow } from '../helpers/small-site';
import { siteOfUnits } from '../stories/site-of-units';

const demoSiteFile = new URL('../../simulator/demo-site/site.yaml', import.meta.url);

/** The demo site as `npm start` compiles it. */
export const demoSite = () => compiledOrThrow(parse(readFileSync(demoSiteFile, 'utf8')));

const sites = new Map<string, CompiledSite>();

/** The demo site with only these units, compiled once: what others of it would send is not the story. */
export function siteWith(ids: readonly string[]): CompiledSite {
  const key = ids.join(' ');
  const known = sites.get(key) ?? compiledOrThrow(siteOfUnits(ids));
  sites.set(key, known);
  return known;
}

export interface Judged {
  /** Every change of an alarm, in order. */
  readonly transitions: readonly AlarmTransition[];
  readonly messages: number;
  /** Alerts that stood at any second, `unit entry` or `gateway entry`, each once. */
  readonly alerted: readonly string[];
  /** Refusals by code: of a sound recording there are none. */
  readonly refused: Readonly<Record<string, number>>;
}

const toRaw = ({ topic, payload }: SimulatedMessage): RawMessage => ({
  topic,
  payload: Buffer.from(payload),
  // Received live: a retained flag is set only on what a broker kept for a later subscriber.
  retained: false,
});

type Look = (pipeline: CountingPipeline, nowMs: number) => void;

/**
 * Runs messages through the real pipeline on the source clock, as the runner does: time first, then the message. `look` sees it each
 * time that the clock has moved.
 */
export function judge(messages: Iterable<SimulatedMessage>, site = demoSite(), look: Look = () => undefined): Judged {
  const pipeline = createPipeline(site, { clock: 'source', startMs: Number.NaN });
  const transitions: AlarmTransition[] = [];
  const refused: Record<string, number> = {};
  const alerted = new Set<string>();
  let nowMs = Number.NEGATIVE_INFINITY;
  let count = 0;
  for (const message of messages) {
    count++;
    if (message.sourceMs > nowMs) {
      nowMs = message.sourceMs;
      transitions.push(...pipeline.advance(nowMs));
      for (const { alert } of pipeline.alerts()) alerted.add(alert);
      look(pipeline, nowMs);
    }
    const { refusal } = pipeline.accept(toRaw(message), nowMs);
    if (refusal !== null) refused[refusal.code] = (refused[refusal.code] ?? 0) + 1;
    pipeline.drainHistory(nowMs, false);
  }
  return { transitions, messages: count, alerted: [...alerted], refused };
}

/** On the demo site, or on what it has of the units that are recorded. */
export const judgeRecording = (recording: Recording, look?: Look): Judged =>
  judge(recordTelemetry(recording), recording.units ? siteWith(recording.units.map(({ id }) => id)) : demoSite(), look);

/** Alarms that were raised, in order: `unit entry`, each once. */
export function raised({ transitions }: Judged): string[] {
  const rows = transitions.filter(({ from, to }) => from === 'normal' && to !== 'normal');
  return [...new Set(rows.map(({ unit, hall, entry }) => `${unit ?? hall ?? 'gateway'} ${entry}`))];
}
