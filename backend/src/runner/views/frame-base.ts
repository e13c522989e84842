import type { Frame } from '@ebbline/shared/contract/live-feed';
import type { PictureScene } from './scene';
import { timeText } from './time-text';
import { toCalling } from './to-calling';

type FrameBase = Pick<Frame, 'time' | 'clock' | 'broker' | 'standing' | 'calling'>;

/** What stands on every screen: the time in force, the broker, how many alarms stand, and which of them call for a person. */
export function frameBase(scene: PictureScene): FrameBase {
  const standing = { 1: 0, 2: 0, 3: 0 };
  for (const { record } of scene.alarms()) standing[record.priority] += 1;
  const calling = toCalling(scene);
  return {
    time: timeText(scene.nowMs()),
    clock: scene.clock(),
    broker: scene.broker(),
    standing,
    ...(calling === null ? {} : { calling }),
  };
}
