import type { Frame, View } from '@ebbline/shared/contract/live-feed';
import { openFeed } from '../helpers/feed';

export interface Screen {
  readonly frames: () => number;
  /** From the sender's time stamp to the frame in hand, ms, one a new value. */
  readonly latenciesMs: number[];
  stop(): void;
}

/** A screen as the browser opens one; it takes each frame at once. */
export function openScreen(url: string, view: View, timedPoint: string | null): Screen {
  const socket = openFeed(url);
  const latenciesMs: number[] = [];
  let frames = 0;
  let newest = '';
  socket.on('connect', () => socket.emit('show', view));
  socket.on('frame', (frame, taken) => {
    taken();
    frames++;
    const time = timeOf(frame, timedPoint);
    if (time === null || time === newest) return;
    newest = time;
    latenciesMs.push(Date.now() - Date.parse(time));
  });
  return { frames: () => frames, latenciesMs, stop: () => void socket.close() };
}

function timeOf(frame: Frame, point: string | null): string | null {
  if (frame.screen !== 'loop' || point === null) return null;
  return frame.points.find(({ id }) => id === point)?.time ?? null;
}

/** The value below which a part of all values lies; NaN of none. */
export function quantile(values: readonly number[], part: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * part))] ?? Number.NaN;
}
