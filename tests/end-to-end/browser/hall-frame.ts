import type { HallFrame, ScreenToServer, ServerToScreen } from '@ebbline/shared/contract/live-feed';
import { io, type Socket } from 'socket.io-client';

/** The first frame of a hall that `holds` is true of, taken on a socket of the test's own, beside the page. */
export async function hallFrame(url: string, hall: string, holds: (frame: HallFrame) => boolean): Promise<HallFrame> {
  const socket: Socket<ServerToScreen, ScreenToServer> = io(url, { transports: ['websocket'], forceNew: true });
  try {
    return await new Promise<HallFrame>((resolve, reject) => {
      socket.on('refused', ({ message }) => reject(new Error(message)));
      socket.on('frame', (frame, taken) => {
        taken();
        if (frame.screen === 'hall' && holds(frame)) resolve(frame);
      });
      socket.emit('show', { screen: 'hall', hall });
    });
  } finally {
    socket.close();
  }
}
