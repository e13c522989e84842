import type { UnitInFile } from '@ebbline/shared/contract/site-file-unit';
import { pumpGrades } from '@ebbline/shared/hydraulics/pump-grades';
import { conductanceRecords, fitOfRecords, lossOfRecords, recordHalfWidth } from './commissioning-records';
import type { CommissionedPump, CommissionedRecords } from './compiled-pipes';
import type { Commissioned, CompiledBranch } from './compiled-unit';
import { designNotStated } from './design-not-stated';
import { siOr, siOrNull } from './read-quantities';

const usual = designNotStated.commissioned;

type FromRecords = Pick<
  Commissioned,
  | 'loopLossPa'
  | 'loopExponent'
  | 'filterLossPa'
  | 'filterExponent'
  | 'uaWPerK'
  | 'uaLoopMassFlowKgPerS'
  | 'uaFacilityMassFlowKgPerS'
  | 'uaExponent'
> &
  CommissionedRecords;

/** Resistances, exchanger and pump as found: of the records where there are any, else of the one figure. */
export function compileRecords(unit: UnitInFile, ratedFlowM3PerS: number): FromRecords {
  const { loop = {}, filter = {} } = unit.commissioning ?? {};
  const loopExponent = loop.exponent ?? usual.loopExponent;
  const filterExponent = filter.exponent ?? usual.filterExponent;
  const ofLoop = lossOfRecords(loop.records, ratedFlowM3PerS, loopExponent);
  const ofFilter = lossOfRecords(filter.records, ratedFlowM3PerS, filterExponent);
  return {
    loopLossPa: ofLoop?.lossPa ?? siOrNull(loop.loss, 'pressureDifference'),
    loopExponent: ofLoop?.exponent ?? loopExponent,
    filterLossPa: ofFilter?.lossPa ?? siOrNull(filter.loss, 'pressureDifference'),
    filterExponent: ofFilter?.exponent ?? filterExponent,
    filterTemperatureC: siOrNull(filter.temperature, 'temperature'),
    ...compileExchanger(unit),
    pump: compilePump(unit, ratedFlowM3PerS),
  };
}

/** One UA at two flows with equal shares, or what three records and more tell. */
function compileExchanger(unit: UnitInFile) {
  const exchanger = unit.commissioning?.exchanger ?? {};
  const uaExponent = exchanger.exponent ?? usual.uaExponent;
  const [first] = conductanceRecords(unit);
  const fit = first === undefined ? null : fitOfRecords(unit, uaExponent);
  const fitted = fit === null || typeof fit === 'string' ? null : fit;
  return {
    uaWPerK: fitted?.clean ?? first?.ua ?? siOrNull(exchanger.ua, 'thermalConductance'),
    uaLoopMassFlowKgPerS: first?.flow1 ?? siOrNull(exchanger.loopFlow, 'massFlow'),
    uaFacilityMassFlowKgPerS: first?.flow2 ?? siOrNull(exchanger.facilityFlow, 'massFlow'),
    uaExponent,
    uaFit: fitted,
    uaAreaM2: siOrNull(exchanger.area, 'area'),
  };
}

function compilePump({ commissioning }: UnitInFile, ratedFlowM3PerS: number): CommissionedPump | null {
  const pump = commissioning?.pump;
  const speed = siOrNull(pump?.speed, 'ratio');
  if (pump === undefined || speed === null) return null;
  const grade = pump.grade === undefined ? null : pumpGrades[pump.grade];
  return {
    flowM3PerS: siOr(pump.flow, 'volumeFlow', ratedFlowM3PerS),
    speed,
    risePa: siOrNull(pump.rise, 'pressureDifference'),
    flowHalfWidth: grade?.flow ?? 0,
    headHalfWidth: grade?.head ?? recordHalfWidth,
    efficiencyHalfWidth: grade?.efficiency ?? recordHalfWidth,
  };
}

/** Loss by way of a branch at its rated flow, where records tell it. */
export function branchLossOf(
  unit: UnitInFile,
  branch: string,
  ratedFlowM3PerS: number | null,
): Pick<CompiledBranch, 'commissioned'> {
  if (ratedFlowM3PerS === null) return {};
  const exponent = unit.commissioning?.loop?.exponent ?? usual.loopExponent;
  const fit = lossOfRecords(unit.branches?.[branch]?.records, ratedFlowM3PerS, exponent);
  return fit === null ? {} : { commissioned: fit };
}
