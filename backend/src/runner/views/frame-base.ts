import type { Frame, HallPicture } from '@ebbline/shared/contract/live-feed';
import type { PictureScene, Scene } from './scene';
import { timeText } from './time-text';
import { toCalling } from './to-calling';

type FrameBase = Pick<Frame, 'time' | 'clock' | 'broker' | 'standing' | 'calling'>;

/** What stands on every picture: the time in force, and how many alarms stand. */
export function pictureBase(scene: PictureScene): Pick<HallPicture, 'time' | 'clock' | 'standing'> {
  const standing = { 1: 0, 2: 0, 3: 0 };
  for (const { record } of scene.alarms()) standing[record.priority] += 1;
  return { time: timeText(scene.nowMs()), clock: scene.clock(), standing };
}

/** What stands on every screen: beside that the broker, and which alarms call for a person. */
export function frameBase(scene: Omit<Scene, 'pipeline'> & PictureScene): FrameBase {
  const calling = toCalling(scene);
  return { ...pictureBase(scene), broker: scene.broker(), ...(calling === null ? {} : { calling }) };
}
