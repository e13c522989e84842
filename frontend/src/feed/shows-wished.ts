import type { Frame, View } from '@ebbline/shared/contract/live-feed';

/** Whether a frame shows what was wished, and not what stands in for it or was wished before. */
export function showsWished(frame: Frame, wish: View): boolean {
  switch (wish.screen) {
    case 'hall':
      return frame.screen === 'hall' && frame.hall === wish.hall;
    case 'loop':
      return frame.screen === 'loop' && frame.unit === wish.unit;
    case 'alarms':
      return frame.screen === 'alarms';
    case 'trends':
      return (
        frame.screen === 'trends' &&
        frame.readings.length === wish.points.length &&
        wish.points.every(({ unit, point }, at) => {
          const shown = frame.readings[at];
          return shown?.unit === unit && shown.reading.id === point;
        })
      );
  }
}
