import { below, isa2016, type FigureRow } from '../figure-row';

/** A flood begins where more than 10 are told within ten minutes, and ends where fewer than 5 are. */
export const timeInFlood: FigureRow = {
  id: 'timeInFlood',
  title: 'Time in flood',
  unit: '%',
  source: isa2016,
  target: below(1),
  of({ floods, period: { fromMs, toMs } }) {
    if (!(toMs > fromMs)) return null;
    const inFlood = floods.map((flood) => Math.min(toMs, flood.toMs ?? toMs) - Math.max(fromMs, flood.fromMs));
    return (100 * inFlood.reduce((sum, ms) => sum + Math.max(0, ms), 0)) / (toMs - fromMs);
  },
};
