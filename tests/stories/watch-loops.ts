import type { LoopFrame } from '@ebbline/shared/contract/live-feed';
import { openFeed } from '../helpers/feed';

export interface LoopWatch {
  /** The newest frame of a unit. */
  frame(unit: string): LoopFrame | undefined;
  stop(): void;
}

/** One screen a unit, each on its Loop screen, as browsers connect. */
export function watchLoops(url: string, units: readonly string[]): LoopWatch {
  const frames = new Map<string, LoopFrame>();
  const sockets = units.map((unit) => {
    const socket = openFeed(url);
    socket.on('connect', () => socket.emit('show', { screen: 'loop', unit }));
    socket.on('frame', (frame, taken) => {
      if (frame.screen === 'loop') frames.set(unit, frame);
      taken();
    });
    return socket;
  });
  return { frame: (unit) => frames.get(unit), stop: () => sockets.forEach((socket) => void socket.close()) };
}
