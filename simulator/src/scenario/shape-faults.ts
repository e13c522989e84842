import type { FaultSize } from '../faults/fault';
import type { TransferCondition } from '../plant/alternating-tanks/alternating-state';
import type { HeaderCondition } from '../plant/shared-loop/shared-loop-state';
import type { FleetUnit } from './demo-fleet';
import type { Timed } from './timed';

export const shapeFaultKinds = ['transferLate', 'transferFailed', 'transferTooOften', 'supplyCheckValveLeaks'] as const;
export type ShapeFaultKind = (typeof shapeFaultKinds)[number];

export interface ActiveShapeFault extends Timed {
  readonly fault: ShapeFaultKind;
  readonly size: FaultSize;
}

/** Parts that only one shape of plant, or a shared loop, has. */
export interface ShapeParts {
  readonly transfer?: TransferCondition;
  readonly header?: HeaderCondition;
}

export interface ShapeFault {
  readonly title: string;
  readonly about: string;
  readonly fits: (unit: FleetUnit) => boolean;
  readonly lastsS: (size: FaultSize) => number | null;
  readonly apply: (parts: ShapeParts, size: FaultSize) => void;
}

const lateS: Readonly<Record<FaultSize, number>> = { small: 4, usual: 10, large: 14 };
const swing: Readonly<Record<FaultSize, number>> = { small: 0.6, usual: 0.3, large: 0.15 };
/** One stroke is missed, some minutes, until repaired. */
const failsForS: Readonly<Record<FaultSize, number | null>> = { small: 30, usual: 180, large: null };
const leakShare: Readonly<Record<FaultSize, number>> = { small: 0.02, usual: 0.08, large: 0.25 };

const alternates = ({ shape }: FleetUnit): boolean => shape === 'b';
const shares = ({ loop }: FleetUnit): boolean => loop !== null;
const stays = (): null => null;

export const shapeFaultTable: Readonly<Record<ShapeFaultKind, ShapeFault>> = {
  transferLate: {
    title: 'transfer late',
    about: 'the valves between the two tanks move seconds after their time: the discharging tank runs low',
    fits: alternates,
    lastsS: stays,
    apply({ transfer }, size) {
      if (transfer) transfer.lateS = lateS[size];
    },
  },
  transferFailed: {
    title: 'transfer failed',
    about: 'the valves between the two tanks do not move: the loop starves within a minute',
    fits: alternates,
    lastsS: (size) => failsForS[size],
    apply({ transfer }) {
      if (transfer) transfer.failed = true;
    },
  },
  transferTooOften: {
    title: 'transfer too often',
    about: 'a level switch speaks too early: the tanks change over after a part of their swing',
    fits: alternates,
    lastsS: stays,
    apply({ transfer }, size) {
      if (transfer) transfer.swingShare = swing[size];
    },
  },
  supplyCheckValveLeaks: {
    title: 'check valve to the supply header leaks',
    about: 'once the unit stands by, water goes from the header back into its supply tank',
    fits: shares,
    lastsS: stays,
    apply({ header }, size) {
      if (header) header.checkValveLeakShare = leakShare[size];
    },
  },
};

/** Puts the parts back, applies what is active, ends what has lasted long enough. */
export function applyShapeFaults(list: ActiveShapeFault[], parts: ShapeParts, nowS: number): void {
  if (parts.transfer) Object.assign(parts.transfer, { lateS: 0, failed: false, swingShare: 1 });
  if (parts.header) parts.header.checkValveLeakShare = 0;
  for (let i = list.length - 1; i >= 0; i -= 1) {
    const active = list[i] as ActiveShapeFault;
    const lastsS = shapeFaultTable[active.fault].lastsS(active.size);
    const over = active.repairedS !== null || (lastsS !== null && nowS - active.sinceS >= lastsS);
    if (over) list.splice(i, 1);
    else shapeFaultTable[active.fault].apply(parts, active.size);
  }
}
