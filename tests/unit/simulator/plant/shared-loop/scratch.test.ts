import { test } from 'vitest';
import { ratedInputs } from '../../../../../simulator/src/plant/plant-inputs';
import { sharedLoopState, soundHeader } from '../../../../../simulator/src/plant/shared-loop/shared-loop-state';
import { racksPerUnit, sharedUnitType } from '../../../../../simulator/src/plant/shared-loop/shared-loop-type';
import { stepSharedLoop, type SharedUnit } from '../../../../../simulator/src/plant/shared-loop/step-shared-loop';
test('x', () => {
  const units: SharedUnit[] = [0, 1].map(() => ({ parameters: sharedUnitType, inputs: ratedInputs({ ...sharedUnitType, racks: racksPerUnit }), header: soundHeader() }));
  const state = sharedLoopState(units.map(({ parameters }) => parameters));
  const run = (s: number) => { for (let i = 0; i < s * 10; i++) stepSharedLoop(units, state, 0.1); };
  const t0 = performance.now(); run(900); console.log('ms per s', (performance.now() - t0) / 900);
  units[0]!.inputs.measuredOffset.separatorPa = 1000;
  for (let k = 0; k < 10; k++) { run(5); console.log(k*5+5, state.units.map(u => [u.last.separatorPa, u.last.supplyTankPa, u.last.loopFlowM3PerS*60000, u.last.transferM3PerS*60000, u.last.returnMainLossPa, u.separatorWaterM3*1000, u.supplyTankWaterM3*1000, u.pumpSpeed].map(x=>x.toFixed(2)).join(' ')).join(' | ')); }
});
