import type { UnitInFile } from '@ebbline/shared/contract/site-file-unit';
import {
  fitConductance,
  type ConductanceFault,
  type ConductanceFit,
  type ConductanceRecord,
} from '@ebbline/shared/heat/fit-conductance';
import { fitResistance, type LossRecord, type ResistanceFit } from '@ebbline/shared/hydraulics/fit-resistance';
import { rectangular } from '@ebbline/shared/uncertainty/combine';
import { siOr } from './read-quantities';

/** Half-width of one record, as a share of it: what good instruments make of a UA or an efficiency. Own rule. */
export const recordHalfWidth = 0.05;

export type LossRecordsInFile = readonly { readonly flow: string; readonly loss: string }[];

export const lossRecords = (records: LossRecordsInFile = []): readonly LossRecord[] =>
  records.map(({ flow, loss }) => ({
    flowM3PerS: siOr(flow, 'volumeFlow', Number.NaN),
    lossPa: siOr(loss, 'pressureDifference', Number.NaN),
  }));

/**
 * Loss at a flow and exponent, as records tell them: three or more are fitted, else the first one is brought to that flow with the usual
 * exponent. Null without a record.
 */
export function lossOfRecords(
  written: LossRecordsInFile | undefined,
  atFlowM3PerS: number,
  usualExponent: number,
): ResistanceFit | null {
  const records = lossRecords(written);
  const [first] = records;
  if (first === undefined) return null;
  return (
    fitResistance(records, atFlowM3PerS) ?? {
      exponent: usualExponent,
      lossPa: first.lossPa * (atFlowM3PerS / first.flowM3PerS) ** usualExponent,
    }
  );
}

export function conductanceRecords({ commissioning }: UnitInFile): readonly ConductanceRecord[] {
  return (commissioning?.exchanger?.records ?? []).map(({ loopFlow, facilityFlow, ua }) => ({
    flow1: siOr(loopFlow, 'massFlow', Number.NaN),
    flow2: siOr(facilityFlow, 'massFlow', Number.NaN),
    ua: siOr(ua, 'thermalConductance', Number.NaN),
  }));
}

/** Films and wall of the clean exchanger, or why the records do not tell them. */
export const fitOfRecords = (unit: UnitInFile, exponent: number): ConductanceFit | ConductanceFault =>
  fitConductance(conductanceRecords(unit), exponent, rectangular(recordHalfWidth));
