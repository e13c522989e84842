import type { HallFrame } from '@ebbline/shared/contract/live-feed';
import { openFeed } from '../../helpers/feed';

/** The first frame of a hall that `holds` is true of, taken on a socket of the test's own, beside the page. */
export async function hallFrame(url: string, hall: string, holds: (frame: HallFrame) => boolean): Promise<HallFrame> {
  const socket = openFeed(url);
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
