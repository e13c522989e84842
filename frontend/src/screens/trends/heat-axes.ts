import type { HeatPair } from './heat-pairs';

/** px */
export const plotSize = 260;
export const plotLeft = 52;
export const plotBottom = 34;

/** Both axes of heat over chip power: the same scale, so that the slant is where all of the heat leaves in the water. */
export function heatAxes(pairs: readonly HeatPair[]): {
  /** End of both axes, kW; a round number, so that the picture stands while the load moves a little. */
  readonly end: number;
  readonly x: (watts: number) => number;
  readonly y: (watts: number) => number;
} {
  const most = Math.max(1, ...pairs.flatMap(({ heat, power }) => [power, heat])) / 1000;
  const step = 10 ** Math.floor(Math.log10(most)) / 2;
  const end = Math.ceil((most * 1.02) / step) * step;
  const share = (watts: number): number => (watts / 1000 / end) * plotSize;
  return { end, x: (watts) => plotLeft + share(watts), y: (watts) => plotSize - share(watts) };
}
