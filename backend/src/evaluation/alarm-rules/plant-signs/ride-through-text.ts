import { usable, type UnitContext } from '../judge-context';

/** The three clocks if the loop's flow stopped now: stored flow, plates to their limit, fans. Null where none is known. */
export function rideThroughText({ slots, state }: UnitContext, lead = 'If the loop’s flow stopped now'): string | null {
  const flow = usable(state, slots.rideThroughFlow);
  const plate = usable(state, slots.rideThroughPlate);
  const fans = usable(state, slots.rideThroughFans);
  const onFans = usable(state, slots.temperatureOnFans);
  const clocks = [
    ...clock('stored water', flow),
    ...clock('plates to their limit', plate),
    ...clock('with fans', fans),
    ...(Number.isNaN(onFans) ? [] : [`chips on fans alone at ${onFans.toFixed(0)} °C`]),
  ];
  return clocks.length === 0 ? null : `${lead}: ${clocks.join('; ')}.`;
}

function clock(name: string, seconds: number): string[] {
  if (Number.isNaN(seconds)) return [];
  return [`${name} ${Number.isFinite(seconds) ? durationText(seconds) : 'without end'}`];
}

/** 45 s, 12 min, 5 h, 3 days. */
export function durationText(seconds: number): string {
  if (seconds < 120) return `${Math.max(0, seconds).toFixed(0)} s`;
  if (seconds < 7200) return `${(seconds / 60).toFixed(0)} min`;
  return seconds < 172_800 ? `${(seconds / 3600).toFixed(0)} h` : `${(seconds / 86_400).toFixed(0)} days`;
}
