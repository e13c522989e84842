import { expect, it } from 'vitest';
import { BoundedNotes } from '../../../../../backend/src/connections/embedded-broker/bounded-notes';

it('a flood of refusals is a few lines a minute, and a sum', () => {
  const said: string[] = [];
  let nowMs = 0;
  const notes = new BoundedNotes(
    (line) => said.push(line),
    () => nowMs,
  );
  for (let i = 0; i < 10_000; i++) {
    notes.note('signIn', 'not let in');
    if (i % 2 === 0) notes.note('publish', 'foreign topic');
  }
  expect(said).toHaveLength(6);
  nowMs = 60_000;
  notes.note('signIn', 'not let in');
  expect(said.slice(6)).toEqual(['MQTT: 9997 more like it (signIn) before.', 'not let in']);
  nowMs = 120_000;
  notes.note('signIn', 'not let in');
  expect(said.slice(8)).toEqual(['not let in']);
});
