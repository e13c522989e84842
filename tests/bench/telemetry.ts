import { benchPoints } from './bench-points';

/** One payload: the time and 40 numbers, about 1 KB. The values wander, and repeat only after a long while. */
export function payload(unit: number, beat: number, nowMs: number): string {
  const body: Record<string, number> = { time: nowMs };
  for (let i = 0; i < benchPoints.length; i++) {
    const point = benchPoints[i];
    if (point === undefined) continue;
    const phase = ((unit * 7919 + beat * 104729 + i * 1299709) % 1000) / 500 - 1;
    body[point.id] = Math.round((point.value + point.wander * phase) * 1000) / 1000;
  }
  return JSON.stringify(body);
}
