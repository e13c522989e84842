import type { Condition } from '../plant/condition';
import type { Readings } from '../plant/plant-readings';
import type { FleetUnit } from './demo-fleet';

const dayS = 86_400;

export const ageingParts = [
  'filter',
  'filterAfterWorks',
  'exchanger',
  'exchangerOpenTower',
  'vacuum',
  'seals',
  'inhibitor',
  'ph',
  'paste',
] as const;
export type AgeingPart = (typeof ageingParts)[number];

export const ageingTitles: Readonly<Record<AgeingPart, string>> = {
  filter: 'filter loads: resistance doubles in 60 days',
  filterAfterWorks: 'filter loads after works: doubles in 3 days',
  exchanger: 'exchanger fouls: UA −10 % a year',
  exchangerOpenTower: 'exchanger fouls on an open tower’s water: UA −25 % in a season of 180 days',
  vacuum: 'vacuum source wears: capacity −3 % a year',
  seals: 'seals age: in-leak +0.1 free L/min a month',
  inhibitor: 'inhibitor is used up: −2 % a month',
  ph: 'pH drifts up as vacuum strips carbon dioxide: 0.05 a week',
  paste: 'paste of one plate dries: its resistance +25 % a year',
};

const usualInhibitorKgPerM3 = 1;
const usualPh = 8.6;
/** The plate whose paste dries: that of the second branch, or the only one. */
const pasteRack = 1;

/**
 * What changes over weeks. Rates are from memory of the trade; each part runs through its days as many times faster
 * than life as it is told, and not at all until then.
 */
export class Ageing {
  private readonly days = new Map<AgeingPart, number>();
  private readonly pace = new Map<AgeingPart, number>();

  constructor(private readonly unit: FleetUnit) {}

  /** `timesAsFast`: 1 is life, 0 stands still. What has aged stays so. */
  setPace(part: AgeingPart, timesAsFast: number): void {
    this.pace.set(part, timesAsFast);
  }

  /** As new: a filter changed, an exchanger cleaned, a plate repasted. */
  renew(part: AgeingPart): void {
    this.pace.delete(part);
    this.days.delete(part);
  }

  paceOf(part: AgeingPart): number {
    return this.pace.get(part) ?? 0;
  }

  agedDays(part: AgeingPart): number {
    return this.days.get(part) ?? 0;
  }

  pass(seconds: number): void {
    for (const [part, timesAsFast] of this.pace) {
      this.days.set(part, this.agedDays(part) + (seconds * timesAsFast) / dayS);
    }
  }

  apply(aged: Condition): void {
    const left = (part: AgeingPart, share: number, days: number): number => (1 - share) ** (this.agedDays(part) / days);
    aged.filterShare =
      this.unit.filterLoad * 2 ** (this.agedDays('filter') / 60 + this.agedDays('filterAfterWorks') / 3);
    aged.exchangerShare = left('exchanger', 0.1, 365) * left('exchangerOpenTower', 0.25, 180);
    aged.vacuumShare = left('vacuum', 0.03, 365);
    const rack = Math.min(pasteRack, aged.pasteShare.length - 1);
    aged.pasteShare[rack] = 1 + (0.25 * this.agedDays('paste')) / 365;
  }

  inLeakLPerMin(): number {
    return this.unit.inLeakLPerMin + (0.1 * this.agedDays('seals')) / 30;
  }

  /** Chemistry that no part of the plant keeps. */
  read(truth: Readings): void {
    truth.set('water.inhibitor', usualInhibitorKgPerM3 * 0.98 ** (this.agedDays('inhibitor') / 30));
    truth.set('water.ph', Math.min(9.6, usualPh + (0.05 * this.agedDays('ph')) / 7));
  }
}
