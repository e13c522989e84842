import { describe, expect, test } from 'vitest';
import { demoStateSchema } from '../../../../shared/contract/demo-faults';
import { demoFleet } from '../../../../simulator/src/scenario/demo-fleet';
import { FleetSimulation } from '../../../../simulator/src/scenario/fleet-simulation';
import { goneState, StateTeller, type ToldState } from '../../../../simulator/src/scenario/state-teller';

const startMs = Date.UTC(2026, 2, 1, 12);
const units = demoFleet.filter(({ id }) => ['N7', 'S1'].includes(id));

describe('the simulator’s state', () => {
  const fleet = new FleetSimulation({ seed: 1, startMs, units });
  const told: ToldState[] = [];
  const teller = new StateTeller(fleet, (state) => told.push(state));
  const command = (fields: object): ToldState | undefined => {
    const text = JSON.stringify(fields);
    teller.answer(text, fleet.command(text));
    return told.at(-1);
  };

  test('lists at the start every unit with its branches and everything that can be commanded, as the contract has it', () => {
    teller.look();
    expect(told).toHaveLength(1);
    const state = demoStateSchema.parse(told[0]);
    expect(state).toMatchObject({ running: true, active: [], refused: null });
    expect(state.units.map(({ id, branches }) => [id, branches.length])).toEqual([
      ['N7', 1],
      ['S1', 6],
    ]);
    expect(state.kinds.find(({ id }) => id === 'cutServerHose')).toMatchObject({ needsBranch: true, kind: 'fault' });
    for (const { choices } of state.kinds) for (const { values, usual } of choices) expect(values).toContain(usual);
  });

  test('is not told again while nothing changes', () => {
    fleet.next();
    teller.look();
    expect(told).toHaveLength(1);
  });

  test('answers a command with the sender’s own mark, and lists what is active with all its keys', () => {
    const state = command({ request: 'q7', fault: 'cutServerHose', unit: 'S1', branch: 'r2', size: 'small' });
    expect(state?.answer).toEqual({ request: 'q7', accepted: true });
    expect(state?.active).toMatchObject([{ id: 'cutServerHose', unit: 'S1', branch: 'r2', repaired: false }]);
    expect(state?.active[0]?.keys).toMatchObject({ size: 'small', checkValve: 'good' });
  });

  test('says what was refused, why, and with which code', () => {
    const state = command({ fault: 'cutServerHose', unit: 'S1', branch: 'r9' });
    expect(state?.answer).toMatchObject({ request: null, accepted: false, code: 'COMMAND_BRANCH' });
    expect(state?.refused?.command).toContain('"r9"');
    expect(state?.active).toHaveLength(1);
  });

  test('tells by itself that a fault has ended', () => {
    command({ fault: 'connectionLost', unit: 'N7', size: 'small' });
    const before = told.length;
    for (let slot = 0; slot < 6 * units.length; slot += 1) fleet.next();
    teller.look();
    expect(told.length).toBe(before + 1);
    expect(told.at(-1)?.active.map(({ id }) => id)).toEqual(['cutServerHose']);
  });

  test('tells a low over the whole site', () => {
    const state = command({ fault: 'deepLow', unit: 'site', size: 'large' });
    expect(state?.active.at(-1)).toMatchObject({ id: 'deepLow', unit: 'site', keys: { size: 'large' } });
  });

  test('says that it is gone in the same shape', () => {
    expect(demoStateSchema.parse(goneState)).toMatchObject({ running: false, kinds: [] });
  });
});
