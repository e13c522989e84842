import type { Telemetry } from './plant';

/** Noise of one second and 1 σ by kind of sensor, as the trade has them (common practice, no source). */
const deviation = { pressure: 0.05, temperature: 0.015, flowShare: 0.004, level: 0.0005, slosh: 0.003 } as const;

/** Numbers between 0 and 1 from a seed (Mulberry32, public domain): the same on every machine. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** The same telemetry as sensors would tell it: noise on all, slosh on the levels. */
export function withNoise(truth: Telemetry, random: () => number): Telemetry {
  const gauss = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const pressure = (value: number): number => value + deviation.pressure * gauss();
  const flow = (value: number): number => value * (1 + deviation.flowShare * gauss());
  const level = (value: number): number => value + deviation.level * gauss() + deviation.slosh * gauss();
  const temperature = (value: number | null): number | null =>
    value === null ? null : value + deviation.temperature * gauss();
  return {
    ...truth,
    tSupply: temperature(truth.tSupply),
    tReturn: temperature(truth.tReturn),
    pTank: pressure(truth.pTank),
    pSeparator: pressure(truth.pSeparator),
    flow: truth.flow === null ? null : flow(truth.flow),
    levelSeparator: level(truth.levelSeparator),
    levelTank: level(truth.levelTank),
    racks: Object.fromEntries(
      Object.entries(truth.racks).map(([rack, { flow: q, p, power }]) => [
        rack,
        { flow: flow(q), p: pressure(p), power: power * (1 + 0.01 * gauss()) },
      ]),
    ),
  };
}
