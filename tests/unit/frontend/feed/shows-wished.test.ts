import type { Frame, View } from '@ebbline/shared/contract/live-feed';
import { expect, it } from 'vitest';
import { showsWished } from '../../../../frontend/src/feed/shows-wished';

const frame = (given: object): Frame => given as Frame;
const readings = (...ids: string[]) => ids.map((id) => ({ unit: 'e1', reading: { id } }));
const points = (...ids: string[]) => ids.map((point) => ({ unit: 'e1', point }));

it.each<readonly [View, object, boolean]>([
  [{ screen: 'hall', hall: 'east' }, { screen: 'hall', hall: 'east' }, true],
  [{ screen: 'hall', hall: 'east' }, { screen: 'hall', hall: 'west' }, false],
  [{ screen: 'loop', unit: 'e1' }, { screen: 'loop', unit: 'e1' }, true],
  [{ screen: 'loop', unit: 'e1' }, { screen: 'loop', unit: 'e2' }, false],
  [{ screen: 'loop', unit: 'e1' }, { screen: 'alarms' }, false],
  [{ screen: 'alarms' }, { screen: 'alarms' }, true],
  [{ screen: 'trends', points: points('a', 'b') }, { screen: 'trends', readings: readings('a', 'b') }, true],
  [{ screen: 'trends', points: points('a', 'b') }, { screen: 'trends', readings: readings('a') }, false],
  [{ screen: 'trends', points: points('a', 'b') }, { screen: 'trends', readings: readings('a', 'c') }, false],
  [{ screen: 'trends', points: points('a') }, { screen: 'alarms' }, false],
])('tells whether a frame shows what was wished, and no other of its kind (%j, %j)', (wish, shown, does) => {
  expect(showsWished(frame(shown), wish)).toBe(does);
});
