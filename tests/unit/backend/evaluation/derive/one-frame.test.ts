import { siteFromText } from '@ebbline/backend/src/connections/site-files/read-site-file';
import { derivedPointsOfUnit } from '@ebbline/backend/src/evaluation/derive/derived-points';
import { deriveUnit } from '@ebbline/backend/src/evaluation/derive/derive-unit';
import { deriveMemoryOf } from '@ebbline/backend/src/evaluation/derive/memory/memory-of-state';
import { sampleMemory } from '@ebbline/backend/src/evaluation/derive/sample-memory';
import { slotsOfPoint } from '@ebbline/backend/src/evaluation/derive/slots-of-point';
import { UncertaintyBudget } from '@ebbline/backend/src/evaluation/derive/uncertainty-budget';
import { UnitFrame } from '@ebbline/backend/src/evaluation/derive/unit-frame';
import { unitPlan } from '@ebbline/backend/src/evaluation/derive/unit-plan';
import { hallStep } from '@ebbline/backend/src/evaluation/pipeline/hall-step';
import { PipelineIntake } from '@ebbline/backend/src/evaluation/pipeline/pipeline-intake';
import { createPipelineState } from '@ebbline/backend/src/evaluation/pipeline/pipeline-state';
import { reasonBit } from '@ebbline/backend/src/evaluation/slots/quality-reasons';
import { describe, expect, it } from 'vitest';
import { benchSite, topicOf } from '../../../../bench/bench-site';
import { payload } from '../../../../bench/telemetry';
import { seededDraws } from '../../../../monte-carlo/draws';

const units = 3;
const seconds = 150;
/** The second unit has a node more, and another rated flow. */
const text = benchSite(units).replace(
  'hall: h001, template: bench }\n  u00003',
  'hall: h001, template: bench, ratedFlow: 300 L/min, nodes: { midReturn: { main: return, elevation: 1.5 m, loss: 2 kPa } } }\n  u00003',
);

function pipeline() {
  const read = siteFromText(text);
  if (!read.ok) throw new Error(JSON.stringify(read.fault));
  return createPipelineState(read.value.site, 'wall');
}

/** Every point of a unit in a frame of its own, with nothing handed from one point to the next: parts are asked for. */
function plain(frame: UnitFrame, pipe: ReturnType<typeof pipeline>, nowMs: number, stopped: boolean): void {
  frame.memory = deriveMemoryOf(pipe.site, pipe.state);
  frame.budget = null;
  frame.tally.budget = null;
  frame.read(pipe.state, nowMs, stopped);
  sampleMemory(frame);
  frame.budget = new UncertaintyBudget();
  frame.tally.budget = frame.budget;
  const has = (id?: string): boolean =>
    derivedPointsOfUnit.find((point) => point.id === id)?.applies?.(frame.plan) ?? true;
  for (const { id, isSet, watches, derive } of derivedPointsOfUnit)
    if (has(id) && (isSet?.(frame.plan) ?? true)) derive(frame);
    else
      for (const slot of slotsOfPoint(frame.plan, id))
        if (slot >= 0) pipe.state.reasons[slot] = has(id) && has(watches) ? reasonBit.notSet : reasonBit.notApplicable;
}

const firstThatDiffers = (one: ArrayLike<number>, other: ArrayLike<number>): number =>
  Array.from(one).findIndex((value, slot) => !Object.is(value, other[slot]));

describe('one frame for all units of a site', () => {
  it('gives each unit what a frame of its own gives it, second by second, whatever is lost and whichever stands', () => {
    const shared = pipeline();
    const own = pipeline();
    expect(shared.site.units[1]?.nodes).toHaveLength(3);
    const frames = own.site.units.map((_, i) => new UnitFrame(own.site, unitPlan(own.site, i)));
    const { uniform } = seededDraws(7);
    const intakes = [shared, own].map((pipe) => new PipelineIntake(pipe));
    let lost = 0;
    for (let s = 0; s < seconds; s += 1) {
      const nowMs = Date.UTC(2025, 5, 1) + s * 1000;
      for (let unit = 0; unit < units; unit += 1) {
        const message = { topic: topicOf(unit), payload: Buffer.from(payload(unit, s, nowMs)), retained: false };
        for (const intake of intakes) intake.accept(message, nowMs);
      }
      for (const pipe of [shared, own]) hallStep(pipe, nowMs);
      for (let slot = 0; slot < shared.state.value.length; slot += 1) {
        if (shared.site.slots.measured[slot] !== 1 || uniform() > 0.01) continue;
        lost += 1;
        for (const { state } of [shared, own]) state.reasons[slot] = reasonBit.stale;
      }
      for (let unit = 0; unit < units; unit += 1) {
        const stopped = uniform() < 0.05;
        deriveUnit(shared.site, shared.state, unit, nowMs, stopped);
        plain(frames[unit] as UnitFrame, own, nowMs, stopped);
      }
      for (const column of ['value', 'expandedUncertainty', 'reasons', 'sourceMs', 'where'] as const)
        expect(firstThatDiffers(shared.state[column], own.state[column]), `${column} in second ${s}`).toBe(-1);
    }
    expect(lost).toBeGreaterThan(100);
  });
});
