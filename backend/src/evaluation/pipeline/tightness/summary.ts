import type { TightnessEnd, TightnessResult } from '@ebbline/shared/contract/tightness-test';
import type { TightnessRecord } from '../tightness-record';

/** The result in words, as it stands in the record: with its units, its interval and what it was held against. */
export function tightnessSummary(record: TightnessRecord): string {
  const { result, acceptanceLimitM3PerS, endedFor } = record;
  const limit = `limit ${litres(acceptanceLimitM3PerS)} free L/min (20 °C, 101.3 kPa)`;
  const broken = endedFor === null ? null : broke[endedFor];
  if (result === null) return `${broken ?? 'Too early for a result'}; ${limit}.`;
  const told = `${resultText(result)}, ${limit}`;
  if (broken !== null) return `${broken}. Until then: ${told}. No verdict.`;
  if (record.verdict === null) return `So far: ${told}.${steadinessText(record)}`;
  return `${verdictText(record, result)} ${told}.${steadinessText(record)}`;
}

const resultText = ({ freeAir, expandedUncertainty, coverageFactor, throughput, pressureRise }: TightnessResult) =>
  `${litres(freeAir)} ± ${litres(expandedUncertainty)} free L/min (k = ${coverageFactor.toFixed(2)}), ` +
  `${throughput.toPrecision(3)} Pa·m³/s, dry gas ${pressureRise < 0 ? 'down' : 'up'} by ${(Math.abs(pressureRise) / 1000).toFixed(2)} kPa`;

function verdictText({ acceptanceLimitM3PerS, verdict, steadiness }: TightnessRecord, result: TightnessResult): string {
  if (verdict === 'passes') return 'Passes: the whole interval is within the limit.';
  if (verdict === 'fails') return 'Fails: the whole interval is above the limit.';
  if (result.freeAir + result.expandedUncertainty < 0)
    return 'Not decided: gas went out; the source was not shut off, or the gas cooled.';
  if (steadiness === 'tooEarly') return 'Not decided: too short to see whether the rise is steady.';
  if (steadiness !== 'steady') return 'Not decided: the rise is not steady.';
  const side = result.freeAir > acceptanceLimitM3PerS ? 'above' : 'below';
  return `Not decided: the value is ${side} the limit, but its interval holds it; a longer test narrows it.`;
}

function steadinessText({ steadiness }: TightnessRecord): string {
  if (steadiness === 'falling') return ' The rate falls: water or pockets give off gas, beside what leaks in.';
  if (steadiness === 'growing') return ' The rate grows: something opens, or the gas warms.';
  return '';
}

const litres = (m3PerS: number): string => {
  const value = m3PerS * 60_000;
  return Math.abs(value) < 10 ? value.toFixed(3) : value.toFixed(1);
};

/** Null: what was measured counts in full. */
const broke: Readonly<Record<TightnessEnd, string | null>> = {
  completed: null,
  endedByPerson: null,
  sourceStarted: 'Broken off: the vacuum source started',
  flowStarted: 'Broken off: water began to flow',
  levelJumped: 'Broken off: the separator level jumped',
  inputBad: 'Broken off: pressure, temperature or level was lost for half a minute',
  configuration: 'Broken off: the site file changed what is measured',
  interrupted: 'Interrupted: the program was restarted',
};
