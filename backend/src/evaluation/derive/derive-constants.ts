import type { LowerWallKind } from '@ebbline/shared/contract/live-feed';

/** How near a lower wall may come before it counts as near, Pa. */
export const lowerWallGuardPa: Readonly<Record<LowerWallKind, number>> = {
  /** 10 kPa above boiling: common practice, no source. */
  node: 10_000,
  /** 1 kPa (0.1 m) above the limit of NPSH, which holds its own reserve; judged less the margin's uncertainty: own rule. */
  pumpInlet: 1_000,
  /** 10 kPa above boiling at the hot wall: common practice, no source. */
  plateWall: 10_000,
};

/** Guard of the vacuum margin where the site file sets no limit for MARGIN-1, Pa: that entry's default. */
export const vacuumMarginGuardPa = 5_000;

/** Half-width of the standard atmosphere as an estimate of ambient, Pa: what weather does in a season. Common practice, no source. */
export const estimatedAmbientHalfWidthPa = 3_000;

/** Half-width of a segment's loss at rated flow, as a share of it: own rule for a commissioned loop. */
export const lossHalfWidth = 0.1;

/** Below this share of rated heat (or this power, where no rated heat is stated) a capture says nothing: own rule. */
export const captureFloorShare = 0.05;
export const captureFloorW = 100;

/** Half-width of a commissioned suction curve, as a share of it: own rule; blank-off and calibrated orifices are good to some per cent. */
export const curveHalfWidth = 0.05;

/** Half-width of a gas room that the site file states, as a share of it: own rule. */
export const gasVolumeHalfWidth = 0.05;

/** Half-width of the commissioned gas load of a tight loop, as a share of it: it moves with flow and level. Own rule. */
export const baselineHalfWidth = 0.5;

/** Half-width of what one open hose lets in, as a share: the discharge coefficient is 0.6 … 0.85 (common practice, no source). */
export const openingHalfWidth = 0.15;

/** Half-width of a commissioned loss of the whole loop or a filter, as a share of it: own rule. */
export const commissionedHalfWidth = 0.05;

/** Half-width of a cross-section or wetted area that the site file states, as a share of it: own rule; 1 % of a bore makes it. */
export const areaHalfWidth = 0.02;

/** Half-width of the stated heat capacity of a plate with its chip, as a share of it: own rule. */
export const plateHeatCapacityHalfWidth = 0.1;

/** Half-width of the stated resistance of a plate or chip on fans alone, as a share of it: fans and dust make it. Own rule. */
export const fanResistanceHalfWidth = 0.1;

/** A pump is compared while flow over speed is so near the commissioned one (share of it): on its curve head and efficiency are the same then. Own rule. */
export const nearFlowOverSpeed = 0.05;

/** Below this share of its reference flow a resistance says nothing: its uncertainty grows without bound. Own rule. */
export const resistanceFloorShare = 0.3;

/** Below this share of rated flow a branch's share says nothing. Own rule. */
export const shareFloor = 0.1;

/** Air of the room, °C, where the hall has no good thermometer: 10 K more make 1.7 % less of the air through an opening. */
export const roomTemperatureC = 20;
