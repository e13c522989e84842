import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { expect, test } from 'vitest';
import { drawSite } from '../../../../simulator/demo-site/draw-site';
import { unitTypes } from '../../../../simulator/src/plant/unit-types';
import { recordTelemetry } from '../../../../simulator/src/scenario/record-telemetry';
import { compiledOrThrow } from '../../../helpers/small-site';

const text = readFileSync(new URL('../../../../simulator/demo-site/site.yaml', import.meta.url), 'utf8');
const site = compiledOrThrow(parse(text));

test('the committed demo site is the one that was drawn', () => {
  // regression: after a change of draw-site.ts write its output to site.yaml
  expect(parse(text)).toEqual(parse(drawSite()));
});

test('the demo site has two halls and sixteen units of every plant shape, two of them on one loop, marked as a demo', () => {
  expect(site.demo).toBe(true);
  expect(site.halls).toHaveLength(2);
  expect(site.units).toHaveLength(16);
  expect([...new Set(site.units.map(({ shape }) => shape))].sort()).toEqual(['a', 'b', 'c']);
  const pair = site.loops.find(({ units }) => units.length > 1);
  expect(pair?.units.map((unit) => site.units[unit]?.id)).toEqual(['N8', 'N9']);
  expect(pair?.unitsNeeded).toBe(1);
});

test('every topic that the simulator publishes is in the site file, and only the hand-read one is not published', () => {
  const startMs = Date.UTC(2026, 2, 1);
  const published = new Set([...recordTelemetry({ seed: 1, startMs, seconds: 1 })].map(({ topic }) => topic));
  const free = [...site.topics.keys()].filter((topic) => !published.has(topic));
  expect(free).toEqual(['quillmere/bench/conductivity']);
  for (const topic of published) expect(site.topics.has(topic), topic).toBe(true);
});

test('no figure of the site file is the plant’s own, and each is within what could be measured', () => {
  const unit = site.units.find(({ id }) => id === 'N3');
  const { elevationM, ratedFlowM3PerS, lossPa } = unitTypes.M;
  if (!unit) throw new Error('no N3');
  const near = (value: number | null, truth: number, half: number): void => {
    expect(value).not.toBe(truth);
    expect(Math.abs((value ?? NaN) - truth)).toBeLessThanOrEqual(half);
  };
  near(unit.design.supplyTankSurfaceM, elevationM.supplySurface, 0.056);
  near(unit.design.ratedFlowM3PerS, ratedFlowM3PerS, 0.011 * ratedFlowM3PerS);
  near(unit.design.pumpSuctionLossPa, lossPa.pumpSuction, 0.06 * lossPa.pumpSuction);
});
