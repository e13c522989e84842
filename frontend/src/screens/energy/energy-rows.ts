import type { EnergyPeriod, EnergyQuantity, EnergyReport, EnergyTotal } from '@ebbline/shared/contract/energy';
import { energyQuantities } from '@ebbline/shared/contract/energy';
import type { EnergyUnit } from '../../text/format-energy';
import { energyUnitFor, formatEnergy, sayMeasured } from '../../text/format-energy';
import { foldUnmeasured, type UnmeasuredHours } from '../../text/fold-unmeasured';
import { toZoneLocal } from '../../text/zone-time';

export const energyWords: { readonly [Q in EnergyQuantity]: string } = {
  heatRemoved: 'heat removed',
  facilityHeat: 'heat to facility water',
  chipEnergy: 'chips, electrical',
  unitEnergy: 'cooling unit, electrical',
};

export interface EnergyCell {
  readonly quantity: EnergyQuantity;
  readonly label: string;
  /** Null where nothing was measured. */
  readonly value: string | null;
  readonly measured: string;
  /** True where some of the period is missing. */
  readonly gap: boolean;
}

export interface EnergyRow {
  readonly key: string;
  readonly label: string;
  readonly cells: readonly EnergyCell[];
  readonly heatPerUnitEnergy: number | null;
  readonly heat: EnergyTotal;
  readonly chips: EnergyTotal;
}

/** Quantities that any unit of the report has a point for; a column without one would stay empty for ever. */
export const columnsOf = (report: EnergyReport): readonly EnergyQuantity[] =>
  energyQuantities.filter((quantity) => report.total[quantity].share !== null);

/** One unit of measure for the periods. The total may be much larger and still reads well in it. */
export const unitOf = (report: EnergyReport): EnergyUnit =>
  energyUnitFor(
    Math.max(0, ...report.periods.flatMap((period) => energyQuantities.map((one) => period[one].energy ?? 0))),
  );

/** A period that has not begun is no gap; it leaves no row. */
export function energyRows(
  report: EnergyReport,
  columns: readonly EnergyQuantity[],
  unit: EnergyUnit,
): readonly EnergyRow[] {
  const begun = report.periods.filter((period) => energyQuantities.some((one) => period[one].wantedSeconds > 0));
  return foldUnmeasured(begun, columns).map((period) =>
    'count' in period
      ? emptyRow(period, sayRun(period, report), columns)
      : rowOf(period, sayPeriod(period, report), columns, unit),
  );
}

const nothing: EnergyTotal = {
  energy: null,
  expandedUncertainty: null,
  measuredSeconds: 0,
  wantedSeconds: 0,
  share: 0,
};
const emptyRow = (run: UnmeasuredHours, label: string, columns: readonly EnergyQuantity[]): EnergyRow => ({
  key: `${label} ${run.from}`,
  label,
  cells: columns.map((quantity) => ({
    quantity,
    label: energyWords[quantity],
    value: null,
    measured: sayMeasured(nothing),
    gap: false,
  })),
  heatPerUnitEnergy: null,
  heat: nothing,
  chips: nothing,
});

export const totalRow = (report: EnergyReport, columns: readonly EnergyQuantity[], unit: EnergyUnit): EnergyRow =>
  rowOf(report.total, 'together', columns, unit);

function rowOf(period: EnergyPeriod, label: string, columns: readonly EnergyQuantity[], unit: EnergyUnit): EnergyRow {
  const cells = columns.map((quantity) => {
    const total = period[quantity];
    return {
      quantity,
      label: energyWords[quantity],
      value: formatEnergy(total, unit),
      measured: sayMeasured(total),
      gap: total.share !== null && total.share < 1,
    };
  });
  return {
    key: `${label} ${period.start}`,
    label,
    cells,
    heatPerUnitEnergy: period.heatPerUnitEnergy,
    heat: period.heatRemoved,
    chips: period.chipEnergy,
  };
}

/** From the first to the last of periods that follow each other. */
function sayRun({ from, to }: UnmeasuredHours, report: EnergyReport): string {
  const { by, timeZone } = report;
  if (by === 'hour') return sayPeriod({ start: from, end: to }, report);
  const last = new Date(Date.parse(to) - 1).toISOString();
  const length = by === 'day' ? 10 : 7;
  return `${toZoneLocal(from, timeZone).slice(0, length)} to ${toZoneLocal(last, timeZone).slice(0, length)}`;
}

/** `14–15`, `2026-03-01`, `2026-03`, in the site's calendar. */
function sayPeriod({ start, end }: Pick<EnergyPeriod, 'start' | 'end'>, { by, timeZone }: EnergyReport): string {
  const local = toZoneLocal(start, timeZone);
  if (by === 'day') return local.slice(0, 10);
  if (by === 'month') return local.slice(0, 7);
  const last = toZoneLocal(end, timeZone).slice(11, 16);
  return `${local.slice(11, 16)}–${last === '00:00' ? '24:00' : last}`;
}
