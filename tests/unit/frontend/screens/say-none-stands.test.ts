import { expect, test } from 'vitest';
import { sayNoneStands } from '../../../../frontend/src/screens/alarms/say-none-stands';

test('an empty list is calm only where every unit has been heard', () => {
  expect(sayNoneStands(0)).toBe('Nothing needs a person.');
  expect(sayNoneStands(1)).toContain('nothing has come from 1 unit since the program started: of it nothing is known');
  expect(sayNoneStands(12)).toContain('nothing has come from 12 units');
});
