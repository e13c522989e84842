import { conductanceRecords, fitOfRecords, lossRecords, type LossRecordsInFile } from './commissioning-records';
import { fitResistance } from '@ebbline/shared/hydraulics/fit-resistance';
import type { UnitDesign } from './compiled-unit';
import type { MergedUnit } from './merge-templates';
import type { FaultList } from './site-fault';

const leastExponent = 1;
const mostExponent = 2.2;

/** Whether records of commissioning are possible, and tell what they are there for. */
export function checkRecords(merged: MergedUnit, design: UnitDesign, faults: FaultList, warnings: FaultList): void {
  const { unit, at } = merged;
  const { loop, filter } = unit.commissioning ?? {};
  const atFlow = design.ratedFlowM3PerS;
  checkLosses(loop?.records, atFlow, ['commissioning', 'loop', 'records'], merged, faults, warnings);
  checkLosses(filter?.records, atFlow, ['commissioning', 'filter', 'records'], merged, faults, warnings);
  for (const [id, branch] of Object.entries(unit.branches ?? {})) {
    if (branch?.records !== undefined && branch.ratedFlow === undefined)
      faults.add(at('branches', id, 'ratedFlow'), 'is missing; the records of this branch are brought to it');
    checkLosses(branch?.records, atFlow, ['branches', id, 'records'], merged, faults, warnings);
  }
  checkExchanger(merged, design, faults, warnings);
  checkPump(merged, faults);
}

function checkLosses(
  written: LossRecordsInFile | undefined,
  atFlowM3PerS: number,
  keys: readonly string[],
  { at }: MergedUnit,
  faults: FaultList,
  warnings: FaultList,
): void {
  const records = lossRecords(written);
  if (records.length === 0) return;
  let possible = true;
  records.forEach(({ flowM3PerS, lossPa }, i) => {
    if (flowM3PerS > 0 && lossPa > 0) return;
    faults.add(at(...keys, i), 'expected a flow and a loss above 0');
    possible = false;
  });
  if (!possible || records.length < 3) return;
  const fit = fitResistance(records, atFlowM3PerS);
  if (fit === null)
    warnings.add(
      at(...keys),
      'the flows differ by less than a fifth, so they do not tell how the loss grows; take three that differ by half. Until then the first one counts, with the usual exponent',
    );
  else if (!(fit.exponent >= leastExponent && fit.exponent <= mostExponent))
    faults.add(
      at(...keys),
      `the loss would grow with flow to the power ${fit.exponent.toFixed(2)}, expected ${leastExponent} to ${mostExponent}; check the records for a mistyped flow, gas in the lines or a valve that was moved`,
    );
}

function checkExchanger({ unit, at }: MergedUnit, design: UnitDesign, faults: FaultList, warnings: FaultList): void {
  const records = conductanceRecords(unit);
  const place = at('commissioning', 'exchanger', 'records');
  const area = design.commissioned.uaAreaM2;
  if (area !== null && !(area > 0)) faults.add(at('commissioning', 'exchanger', 'area'), 'expected more than 0');
  if (records.length === 0) return;
  if (records.some(({ flow1, flow2, ua }) => !(flow1 > 0 && flow2 > 0 && ua > 0))) {
    faults.add(place, 'expected flows and a UA above 0 in every record');
    return;
  }
  if (records.length === 2)
    warnings.add(
      place,
      'two records do not tell two films and a wall apart; add a third, with one flow changed by half. Until then the first one counts, with equal shares',
    );
  if (records.length < 3) return;
  const fit = fitOfRecords(unit, design.commissioned.uaExponent);
  if (fit === 'undetermined')
    warnings.add(
      place,
      'the flows lie too near each other to tell two films and a wall apart; take records in which first one flow and then the other is changed by half. Until then the first one counts, with equal shares',
    );
  if (fit === 'negative')
    faults.add(
      place,
      'by these records a film or the wall would have a resistance below 0, which none has; check them for swapped flows, a sensor that was off or a side that was not settled, and take them again',
    );
}

function checkPump({ unit, at }: MergedUnit, faults: FaultList): void {
  const pump = unit.commissioning?.pump;
  if (pump === undefined) return;
  if (pump.speed === undefined)
    faults.add(
      at('commissioning', 'pump', 'speed'),
      'is missing; figures of a pump hold at its speed; give it, such as 95 %',
    );
}
