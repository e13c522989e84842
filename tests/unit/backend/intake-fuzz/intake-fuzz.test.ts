import { describe, expect, it } from 'vitest';
import { acceptMessage } from '../../../../backend/src/evaluation/quality/accept-message';
import { refusalCodes, type RefusalCode } from '../../../../backend/src/evaluation/sample/acceptance';
import { createIntakeContext } from '../../../../backend/src/evaluation/sample/intake-context';
import type { CompiledSite } from '../../../../backend/src/evaluation/site/compiled-site';
import { createSlotState } from '../../../../backend/src/evaluation/slots/slot-state';
import { smallSite } from '../../../helpers/small-site';
import { mutate, seededDraw } from './mutate';
import { otherMessages, unitOneMessage, unitOneSamples, unitOneTopic } from './valid-messages';

const startMs = Date.UTC(2026, 0, 1);

function createRig(site: CompiledSite) {
  const state = createSlotState(site.slots.count);
  return { state, context: createIntakeContext(site, state, 'wall') };
}

/** Feeds a good unit beside bent messages, a second a round; returns what was counted. */
function feed(site: CompiledSite, seed: number, rounds: number, { state, context } = createRig(site)) {
  const draw = seededDraw(seed);
  const codes = new Set<RefusalCode>();
  const unitOne = site.holders[1];
  let goodAccepted = 0;
  let goodHeard = 0;
  let bentRefused = 0;
  let fromUnitOne = false;
  const hear = (slot: number): void => {
    const own = unitOne !== undefined && slot >= unitOne.firstSlot && slot < unitOne.firstSlot + unitOne.slotCount;
    if (own && fromUnitOne) goodHeard += 1;
  };
  for (let round = 0; round < rounds; round += 1) {
    const atMs = startMs + round * 1000;
    context.wallMs = atMs;
    for (const valid of [...otherMessages(atMs), unitOneMessage(atMs)]) {
      let bent = mutate(valid, draw, atMs);
      // A bent message of unit one goes to the topic of no one: its own stream is the good one.
      if (bent.topic === unitOneTopic) bent = { ...bent, topic: 'small/m2/return/t' };
      const acceptance = acceptMessage(site, state, context, bent, atMs, hear);
      bentRefused += acceptance.refused;
      if (acceptance.refusal !== null) codes.add(acceptance.refusal.code);
    }
    fromUnitOne = true;
    goodAccepted += acceptMessage(site, state, context, unitOneMessage(atMs), atMs, hear).accepted;
    fromUnitOne = false;
  }
  return { codes, goodAccepted, goodHeard, bentRefused, state };
}

describe('intake under seeded, structure-aware mutation', () => {
  it('produces every refusal code there is', () => {
    const { codes } = feed(smallSite(), 1, 1500);
    expect([...refusalCodes].filter((code) => !codes.has(code))).toEqual([]);
  });

  it.each([2, 3, 5, 8, 13])('never throws, and a good unit in the same stream loses nothing (seed %i)', (seed) => {
    const rounds = 600;
    const { goodAccepted, goodHeard, bentRefused } = feed(smallSite(), seed, rounds);
    expect(bentRefused).toBeGreaterThan(rounds);
    expect(goodAccepted).toBe(rounds * unitOneSamples);
    expect(goodHeard).toBe(rounds * unitOneSamples);
  });

  it('gives the same result for the same seed', () => {
    const first = feed(smallSite(), 21, 200);
    const second = feed(smallSite(), 21, 200);
    expect(second.bentRefused).toBe(first.bentRefused);
    expect([...second.state.value]).toEqual([...first.state.value]);
  });

  it('keeps memory flat: no message leaves anything behind', () => {
    const collect = globalThis.gc;
    if (collect === undefined) throw new Error('run this test with --expose-gc');
    const site = smallSite();
    const heapMb = (): number => {
      collect();
      collect();
      return process.memoryUsage().heapUsed / 1_048_576;
    };
    const rig = createRig(site);
    feed(site, 34, 500, rig);
    const before = heapMb();
    feed(site, 34, 4000, rig);
    const growthMb = heapMb() - before;
    // 44,000 bent messages, some thousand topics of their own. If each left 100 bytes it would be 4.4 MB.
    expect(growthMb).toBeLessThan(3);
    expect(rig.context.acceptance.accepted).toBe(unitOneSamples);
  });

  it('grows by less than a megabyte over a million distinct topics', () => {
    const collect = globalThis.gc;
    if (collect === undefined) throw new Error('run this test with --expose-gc');
    const site = smallSite();
    const { state, context } = createRig(site);
    const payload = Buffer.from('21.5');
    const hear = (): void => undefined;
    const flood = (from: number, to: number): void => {
      for (let i = from; i < to; i += 1)
        acceptMessage(site, state, context, { topic: `flood/${i}`, payload, retained: false }, startMs, hear);
    };
    flood(0, 10_000);
    collect();
    const before = process.memoryUsage().heapUsed;
    flood(10_000, 1_010_000);
    collect();
    expect((process.memoryUsage().heapUsed - before) / 1_048_576).toBeLessThan(1);
  });
});
