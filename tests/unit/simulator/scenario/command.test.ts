import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readCommand } from '../../../../simulator/src/scenario/command';
import { commandableOf } from '../../../../simulator/src/scenario/commandable';
import { demoFleet } from '../../../../simulator/src/scenario/demo-fleet';

const there = commandableOf(demoFleet);
const read = (fields: unknown) => readCommand(JSON.stringify(fields), there);

describe('a command', () => {
  test('is read with its usual size, a good check valve, a rise and a start where it does not say otherwise', () => {
    const command = read({ fault: 'cutServerHose', unit: 'N3', branch: 'r5' });
    expect(command.ok && command.value).toMatchObject({
      what: { id: 'cutServerHose', kind: 'fault' },
      unit: 'N3',
      branch: 4,
      action: 'start',
      keys: { size: 'usual', checkValve: 'good' },
    });
  });

  test('means the same in the form that people write and in the one that a screen sends', () => {
    const written = read({ fault: 'loadStep', unit: 'S1', size: 'small', direction: 'fall', action: 'repair' });
    const keys = { size: 'small', direction: 'fall' };
    const sent = read({ kind: 'fault', id: 'loadStep', unit: 'S1', branch: null, action: 'repair', keys });
    expect(written.ok).toBe(true);
    expect(sent).toEqual(written);
  });

  test.each([
    ['no JSON', 'cut it', 'COMMAND_SHAPE'],
    ['a list', '[1]', 'COMMAND_SHAPE'],
    ['nothing', 'null', 'COMMAND_SHAPE'],
    ['an unknown key', '{"fault":"loadStep","unit":"N1","power":9}', 'COMMAND_SHAPE'],
    ['an unknown fault', '{"fault":"flood","unit":"N1"}', 'COMMAND_SHAPE'],
    ['no fault', '{"unit":"N1"}', 'COMMAND_SHAPE'],
    ['an unknown size', '{"fault":"loadStep","unit":"N1","size":"huge"}', 'COMMAND_SHAPE'],
    ['both a fault and an operation', '{"fault":"loadStep","operation":"stop","unit":"N1"}', 'COMMAND_SHAPE'],
    ['a key of another fault', '{"fault":"slowInLeak","unit":"N1","direction":"rise"}', 'COMMAND_SHAPE'],
    ['a fault of the site at a unit', '{"fault":"deepLow","unit":"N1"}', 'COMMAND_UNIT'],
    ['an unknown action', '{"fault":"loadStep","unit":"N1","action":"stop"}', 'COMMAND_SHAPE'],
    ['an unknown unit', '{"fault":"loadStep","unit":"N99"}', 'COMMAND_UNIT'],
    ['a cut without a branch', '{"fault":"cutServerHose","unit":"N1"}', 'COMMAND_BRANCH'],
    ['a branch that the unit has not', '{"fault":"cutServerHose","unit":"S1","branch":"r7"}', 'COMMAND_BRANCH'],
  ])('with %s is refused with its code', (_what, text, code) => {
    const command = readCommand(text, there);
    expect(!command.ok && command.fault.code).toBe(code);
  });

  test('of any text is read or refused, never a crash', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        expect(typeof readCommand(text, there).ok).toBe('boolean');
      }),
    );
  });
});
