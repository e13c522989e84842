import type { EnergyPeriod, EnergyQuantity } from '@ebbline/shared/contract/energy';

/** Hours that follow each other and of which nothing was measured: one line of a report says it of all of them. */
export interface UnmeasuredHours {
  readonly from: string;
  readonly to: string;
  readonly count: number;
}

/** As few as two lines say it more plainly each by itself. */
const fewest = 3;

/** The periods in their order, with each run of three or more of which nothing was measured as one. */
export function foldUnmeasured(
  periods: readonly EnergyPeriod[],
  quantities: readonly EnergyQuantity[],
): readonly (EnergyPeriod | UnmeasuredHours)[] {
  const lines: (EnergyPeriod | UnmeasuredHours)[] = [];
  let run: EnergyPeriod[] = [];
  const endRun = (): void => {
    const [first] = run;
    const last = run.at(-1);
    if (first === undefined || last === undefined || run.length < fewest) lines.push(...run);
    else lines.push({ from: first.start, to: last.end, count: run.length });
    run = [];
  };
  for (const period of periods) {
    if (quantities.every((one) => period[one].energy === null)) run.push(period);
    else {
      endRun();
      lines.push(period);
    }
  }
  endRun();
  return lines;
}
