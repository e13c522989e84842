import { deriveHall } from '../../backend/src/evaluation/derive/derive-hall';
import { deriveUnit } from '../../backend/src/evaluation/derive/derive-unit';
import { shiftLimit } from '../../backend/src/evaluation/derive/memory/shift-watch';
import { type shiftSignals } from '../../backend/src/evaluation/derive/watched-signals';
import { buildRichUnitM, runRichUnitM } from '../helpers/rich-unit-m';
import type { BuiltSite } from '../helpers/compiled-site-builder';
import { montgomeryData } from './montgomery-data';
import { absolute, type PublishedTable } from './published-table';

type Signal = (typeof shiftSignals)[number];

interface Mover {
  readonly inputs: (value: number) => Readonly<Record<string, number>>;
  readonly low: number;
  readonly high: number;
}
const one = (point: string, low: number, high: number): Mover => ({
  inputs: (value) => ({ [point]: value }),
  low,
  high,
});

/** What moves each figure on a site, from where to where; UA by facility water that is warmer as a whole, so that both sides still balance. */
const movers: Readonly<Record<Signal, Mover>> = {
  heatBalance: one('facility.flow', 0.001, 0.02),
  capture: one('branch.r1.power', 1_000, 1e6),
  flowShare: one('loop.flow', 0.001, 0.02),
  uaRatio: {
    inputs: (value) => ({ 'facility.supply.temperature': value, 'facility.return.temperature': value + 8.7 }),
    low: 25,
    high: 34,
  },
  pumpEfficiency: one('pump.power', 300, 20_000),
  inLeak: one('vacuum.exhaustFlow', 1e-5, 0.05),
};

const blockS = 600;
const lookS = 10;
const learnt = 24;

/** The first look at a mean of ten minutes. A look finds what the second before it worked out. */
function begin(built: BuiltSite, number: number, signal: Signal, value: number): void {
  const fromS = number * blockS;
  for (const s of [fromS - 1, fromS]) step(built, s * 1000, signal, value);
}

/** The rest of it. */
function fill(built: BuiltSite, number: number, signal: Signal, value: number): void {
  for (let s = number * blockS + lookS; s < (number + 1) * blockS; s += lookS) step(built, s * 1000, signal, value);
}

function step(built: BuiltSite, nowMs: number, signal: Signal, value: number): void {
  runRichUnitM(built, nowMs);
  for (const [point, input] of Object.entries(movers[signal].inputs(value))) built.set(point, input, nowMs);
  deriveHall(built.site, built.state, 0, nowMs);
  deriveUnit(built.site, built.state, 0, nowMs, false);
}

/** The input that gives the figure this value, by halving: the figure rises or falls with it throughout. */
function inputFor(built: BuiltSite, signal: Signal, wanted: number): number {
  const { low, high } = movers[signal];
  const at = (value: number): number => {
    step(built, 0, signal, value);
    return built.value(signal);
  };
  const rises = at(high) > at(low);
  let [from, to] = [low, high];
  for (let i = 0; i < 60; i += 1) {
    const middle = (from + to) / 2;
    if (at(middle) < wanted === rises) from = middle;
    else to = middle;
  }
  return (from + to) / 2;
}

/** CUSUM in σ at a sample of the published data, as the site charts the same data in the scale of the figure. */
function onSite(signal: Signal, target: number, deviation: number): (inputs: Record<string, number>) => number {
  let sums: readonly number[] | null = null;
  return ({ i = 0 }) => (sums ??= chartOnSite(signal, target, deviation))[i] ?? Number.NaN;
}

function chartOnSite(signal: Signal, target: number, deviation: number): readonly number[] {
  const probe = buildRichUnitM();
  const inputOf = (x: number): number => inputFor(probe, signal, target + deviation * (x - 10));
  // n values that alternate by σ √((n−1)/n) have the deviation σ.
  const half = Math.sqrt((learnt - 1) / learnt);
  const sides = [inputOf(10 - half), inputOf(10 + half)] as const;
  const built = buildRichUnitM();
  const values = [
    ...Array.from({ length: learnt }, (_, b) => sides[b % 2 === 0 ? 0 : 1]),
    ...montgomeryData.map(inputOf),
  ];
  const sums: number[] = [];
  values.forEach((value, number) => {
    begin(built, number, signal, value);
    if (number >= learnt) sums.push(built.value(`${signal}Shift`) * shiftLimit);
    fill(built, number, signal, value);
  });
  begin(built, values.length, signal, inputOf(10));
  sums.push(built.value(`${signal}Shift`) * shiftLimit);
  return sums;
}

/** The larger sum as printed: the lower one is at most 1.77 and passes before the upper one rises. */
const printed = [
  [5, 2.82],
  [28, 4.47],
  [29, 5.28],
  [30, 5.3],
] as const;

const shiftTable = (signal: Signal, target: number, deviation: number): PublishedTable => ({
  title: `CUSUM of 30 samples as means of ${signal}, σ`,
  subject: { point: `${signal}Shift` },
  evaluate: (equation, { i = 0 }) => montgomeryData.slice(0, i).reduce((before, x) => equation(before, x, 10, 0.5), 0),
  onSite: { point: `${signal}Shift`, evaluate: onSite(signal, target, deviation) },
  rows: printed.map(([i, expected]) => ({
    id: `cusum-montgomery C+(${i}) of ${signal}`,
    status: 'published',
    source: 'Montgomery, Introduction to Statistical Quality Control, example 9.1, table 9.2',
    inputs: { i },
    expected,
    tolerance: absolute(0.006),
  })),
});

export const heatBalanceShiftTable = shiftTable('heatBalance', 1, 0.01);
export const captureShiftTable = shiftTable('capture', 0.8, 0.01);
export const flowShareShiftTable = shiftTable('flowShare', 1, 0.005);
export const uaRatioShiftTable = shiftTable('uaRatio', 0.75, 0.01);
export const pumpEfficiencyShiftTable = shiftTable('pumpEfficiency', 0.45, 0.01);
export const inLeakShiftTable = shiftTable('inLeak', 2e-4, 1e-5);
