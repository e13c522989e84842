import { filmCoefficient, meanReferredResistance } from '@ebbline/shared/heat/film-coefficient';
import { reynoldsNumber } from '@ebbline/shared/hydraulics/pipe-friction';
import { meanVelocity } from '@ebbline/shared/hydraulics/velocity';
import { combine2, combine3, expanded, rectangular } from '@ebbline/shared/uncertainty/combine';
import { celsius } from '@ebbline/shared/units/quantity';
import { reasonBit } from '../../slots/quality-reasons';
import { areaHalfWidth, commissionedHalfWidth } from '../derive-constants';
import { part } from '../uncertainty-budget';
import type { UnitFrame } from '../unit-frame';
import type { UnitPlan } from '../unit-plan';
import { uOf } from '../write-point';
import { writeDerived } from '../write-derived';
import { plateFlowShare, plateFlowSlot, takePlateFlow } from './plate-flow';
import { hasPlateResistance } from './plate-resistance';

export const hasFilmCoefficient = (plan: UnitPlan): boolean =>
  hasPlateResistance(plan) &&
  (plan.unit.design.plateChannel?.wallResistanceKPerW ?? null) !== null &&
  (plan.unit.design.plateChannel?.wettedAreaM2 ?? null) !== null;

export const hasChannelReynolds = ({ unit, slot, pipes }: UnitPlan): boolean =>
  slot['supply.temperature'] >= 0 &&
  slot['return.temperature'] >= 0 &&
  unit.plates.length > 0 &&
  !Number.isNaN(pipes.channelAreaM2);

/** Relative standard uncertainty of a stated rated flow of one plate, and of a stated wall resistance. */
const statedU = rectangular(commissionedHalfWidth);

/**
 * Film coefficient of each plate, W/(m²K), of its whole wetted area: case to mean water, less what stands between case and wetted wall.
 * Says nothing where what is left is smaller than its uncertainty allows.
 */
export function deriveFilmCoefficient(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  const { plates, design } = plan.unit;
  const wall = design.plateChannel?.wallResistanceKPerW ?? Number.NaN;
  const area = design.plateChannel?.wettedAreaM2 ?? Number.NaN;
  const capacityRate =
    frame.supplyDensity *
    plan.fluid.heatCapacity(frame.supplyTemperature) *
    (design.plateChannel?.ratedFlowM3PerS ?? Number.NaN);
  for (let i = 0; i < plates.length; i += 1) {
    const plate = plates[i];
    const target = plan.pipes.filmSlot[i] ?? -1;
    if (plate === undefined || target < 0) continue;
    const resistanceSlot = plan.plateResistanceSlot[i] ?? -1;
    const flowSlot = plateFlowSlot(frame, plate.branch);
    tally.begin();
    const resistance = tally.take(state, resistanceSlot);
    takePlateFlow(frame, plate.branch);
    const rate = capacityRate * plateFlowShare(frame, plate.branch);
    // To the mean water: (T − T_in)/P is the resistance to the supply already, so a plate of 1 W and that many K stands for it.
    const toMean = meanReferredResistance(resistance, 0, 1, rate);
    const film = toMean - wall;
    const ofRate = 1 / (2 * rate);
    const ofResistance = uOf(frame, resistanceSlot);
    const ofFlow = ofRate * combine2(statedU, uOf(frame, flowSlot) / (state.value[flowSlot] ?? Number.NaN));
    const ofWall = wall * statedU;
    if (film < 2 * combine3(ofResistance, ofFlow, ofWall)) tally.note(reasonBit.undefined, Infinity);
    const value = filmCoefficient(toMean, wall, area);
    const u = combine2(
      combine2(
        part(frame, 'plate.<id>.resistance', (value * ofResistance) / film),
        part(frame, 'plateChannel.ratedFlow', (value * ofFlow) / film),
      ),
      combine2(
        part(frame, 'plateChannel.wallResistance', (value * ofWall) / film),
        part(frame, 'plateChannel.wettedArea', value * rectangular(areaHalfWidth)),
      ),
    );
    writeDerived(state, target, frame.nowMs, tally, value, expanded(u), plate.place);
  }
}

/** Reynolds number in the channels of each plate, at the mean of supply and return: below about 2,300 their flow is laminar. */
export function deriveChannelReynolds(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  const { plates, design } = plan.unit;
  const { channelAreaM2, channelDiameterM, reynoldsSlot } = plan.pipes;
  const viscosity = plan.fluid.viscosity(celsius((frame.supplyTemperature + frame.returnTemperature) / 2));
  const rated = meanVelocity(design.plateChannel?.ratedFlowM3PerS ?? Number.NaN, channelAreaM2);
  const atRated = reynoldsNumber(rated, channelDiameterM, frame.supplyDensity, viscosity);
  for (let i = 0; i < plates.length; i += 1) {
    const plate = plates[i];
    const target = reynoldsSlot[i] ?? -1;
    if (plate === undefined || target < 0) continue;
    const flowSlot = plateFlowSlot(frame, plate.branch);
    tally.begin();
    tally.take(state, plan.slot['supply.temperature']);
    tally.take(state, plan.slot['return.temperature']);
    takePlateFlow(frame, plate.branch);
    const value = atRated * plateFlowShare(frame, plate.branch);
    const u = combine3(
      part(
        frame,
        'branch.<id>.flow or loop.flow',
        (value * uOf(frame, flowSlot)) / (state.value[flowSlot] ?? Number.NaN),
      ),
      part(frame, 'plateChannel.ratedFlow', value * statedU),
      part(frame, 'plateChannel.width, plateChannel.height', value * rectangular(areaHalfWidth)),
    );
    writeDerived(state, target, frame.nowMs, tally, value, expanded(u), plate.place);
  }
}
