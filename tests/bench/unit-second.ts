import { siteFromText } from '@ebbline/backend/src/connections/site-files/read-site-file';
import type { UnitContext } from '@ebbline/backend/src/evaluation/alarm-rules/judge-context';
import { deriveUnit } from '@ebbline/backend/src/evaluation/derive/derive-unit';
import { createPipeline } from '@ebbline/backend/src/evaluation/pipeline/create-pipeline';
import { createContext, fillContext } from '@ebbline/backend/src/evaluation/pipeline/fill-context';
import { hallStep } from '@ebbline/backend/src/evaluation/pipeline/hall-step';
import type { RawMessage } from '@ebbline/backend/src/evaluation/pipeline/inputs';
import { judgeInstruments } from '@ebbline/backend/src/evaluation/pipeline/judge-instruments';
import { judgeUnit } from '@ebbline/backend/src/evaluation/pipeline/judge-unit';
import { modeOfUnit } from '@ebbline/backend/src/evaluation/pipeline/mode-of-unit';
import { PipelineIntake } from '@ebbline/backend/src/evaluation/pipeline/pipeline-intake';
import { createPipelineState } from '@ebbline/backend/src/evaluation/pipeline/pipeline-state';
import { isStanding } from '@ebbline/backend/src/evaluation/pipeline/standing-water';
import type { CompiledSite } from '@ebbline/backend/src/evaluation/site/compiled-site';
import { benchSite, topicOf } from './bench-site';
import { judgedAlarms } from './judged-alarms';
import { payload } from './telemetry';

const startMs = Date.UTC(2025, 5, 1);
const parts = ['JSON.parse', 'decode and accept', 'derive', 'judgeUnit', 'judgeInstruments', 'advance'] as const;
type Part = (typeof parts)[number];
const say = (line: string): void => void process.stdout.write(`${line}\n`);

/** CPU time of each part by round; the least of the rounds counts, as what else the machine does only ever adds. */
class Meter {
  private readonly roundsUs = new Map<Part, number[]>();
  round = -1;

  measure(part: Part, work: () => void): void {
    const before = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(before);
    if (this.round < 0) return;
    const rounds = this.roundsUs.get(part) ?? new Array<number>(roundsInAll).fill(0);
    rounds[this.round] = (rounds[this.round] as number) + user + system;
    this.roundsUs.set(part, rounds);
  }

  leastUs(part: Part): number {
    return Math.min(...(this.roundsUs.get(part) ?? []));
  }
}

/** Longer than any on-delay that noise may begin. */
const warmUpS = 90;
const roundsInAll = 5;
const roundOf = (beat: number, warmUp: number, seconds: number): number =>
  Math.floor(((beat - warmUp) * roundsInAll) / seconds);

function siteOf(units: number): CompiledSite {
  const read = siteFromText(benchSite(units));
  if (!read.ok) throw new Error(`the bench site is not accepted: ${JSON.stringify(read.fault[0])}`);
  return read.value.site;
}

const messagesOf = (units: number, beat: number, nowMs: number): readonly RawMessage[] =>
  Array.from({ length: units }, (_, i) => ({
    topic: topicOf(i),
    payload: Buffer.from(payload(i, beat, nowMs)),
    retained: false,
  }));

/** Parts of the step of a unit one by one, as the pipeline runs them. Gives how many alarms of a unit were judged. */
function runParts(meter: Meter, units: number, seconds: number, warmUp: number): number {
  const pipeline = createPipelineState(siteOf(units), 'wall');
  const { site, state } = pipeline;
  const intake = new PipelineIntake(pipeline);
  const context: UnitContext = createContext(pipeline);
  pipeline.startedMs = startMs;
  let sum = 0;
  for (let beat = 0; beat < seconds + warmUp; beat++) {
    meter.round = roundOf(beat, warmUp, seconds);
    const nowMs = startMs + beat * 1000;
    const messages = messagesOf(units, beat, nowMs);
    meter.measure('JSON.parse', () => {
      for (const message of messages)
        sum += (JSON.parse(message.payload.toString()) as Record<string, number>)['loop.flow'] ?? 0;
    });
    meter.measure('decode and accept', () => {
      for (const message of messages) intake.accept(message, nowMs);
    });
    hallStep(pipeline, nowMs);
    for (let unit = 0; unit < units; unit++)
      pipeline.modes[unit] = modeOfUnit(state, pipeline.unitSlots[unit] as UnitContext['slots']);
    meter.measure('derive', () => {
      for (let unit = 0; unit < units; unit++)
        deriveUnit(site, state, unit, nowMs, isStanding(pipeline.modes[unit] as ReturnType<typeof modeOfUnit>));
    });
    meter.measure('judgeUnit', () => {
      for (let unit = 0; unit < units; unit++) {
        fillContext(pipeline, context, unit, pipeline.modes[unit] as ReturnType<typeof modeOfUnit>, nowMs);
        judgeUnit(pipeline, context);
      }
    });
    meter.measure('judgeInstruments', () => {
      for (const { holder } of site.units) judgeInstruments(pipeline, holder, nowMs);
    });
    pipeline.history.drain(nowMs, false);
  }
  if (!(sum > 0)) throw new Error('nothing was parsed');
  const places = pipeline.unitPlaces[0]?.length ?? 0;
  calm(pipeline.book.standing().map(({ alarm }) => alarm));
  const judged = judgedAlarms(pipeline);
  say(`${units} units, ${seconds} s; ${places} entries a unit, judged as ${judged} alarms; no alarm stands`);
  return judged;
}

/** Alarms cost more than a quiet plant: a bench in which some stand measures something else. */
function calm(standing: readonly string[]): void {
  if (standing.length > 0)
    throw new Error(`the bench is not calm: ${standing.length} alarms stand, such as ${standing[0]}`);
}

/** The whole step of all units, as the runner calls it. */
function runWhole(meter: Meter, units: number, seconds: number, warmUp: number): void {
  const pipeline = createPipeline(siteOf(units), { clock: 'wall', startMs });
  for (let beat = 0; beat < seconds + warmUp; beat++) {
    meter.round = roundOf(beat, warmUp, seconds);
    const nowMs = startMs + beat * 1000;
    for (const message of messagesOf(units, beat, nowMs)) pipeline.accept(message, nowMs);
    meter.measure('advance', () => void pipeline.advance(nowMs + 950));
    pipeline.drainHistory(nowMs + 950, false);
  }
}

/**
 * CPU time a unit and second of each part, and its ratio to JSON.parse of the same payloads in the same run, and to a bare
 * MQTT subscriber.
 * @param bareUs of a bare subscriber, µs a message; null where it was not measured
 */
export function run(args: readonly string[], bareUs: number | null): void {
  if (bareUs !== null) say(`bare subscriber ${bareUs.toFixed(1)} µs CPU a message`);
  const sizes = args.length > 0 ? args.map(Number) : [1000, 5000];
  for (const units of sizes) {
    const meter = new Meter();
    const seconds = roundsInAll * Math.max(4, Math.round(12_000 / units));
    const judged = runParts(meter, units, seconds, warmUpS);
    runWhole(meter, units, seconds, warmUpS);
    const perUnit = (part: Part): number => (meter.leastUs(part) * roundsInAll) / (units * seconds);
    for (const part of parts) {
      const ratio = perUnit(part) / perUnit('JSON.parse');
      const toBare = bareUs === null ? '' : `  ${(perUnit(part) / bareUs).toFixed(2).padStart(6)} × bare subscriber`;
      say(
        `  ${part.padEnd(18)} ${perUnit(part).toFixed(2).padStart(7)} µs CPU  ${ratio.toFixed(2).padStart(6)} × JSON.parse${toBare}`,
      );
    }
    const aRule = perUnit('judgeUnit') / judged;
    say(`  of judgeUnit, an alarm ${aRule.toFixed(3)} µs, thirty ${(30 * aRule).toFixed(2)} µs`);
  }
}
