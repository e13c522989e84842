import type { UnitEntryId } from './entry-ids';

/**
 * Consequences fold under their first-out, on the same unit: the first of these that is in alarm. They stay in the
 * list, marked. Beside these, COM-1 folds INS-1 of the points behind its gateway. A first-out never has a lower priority
 * than what it folds (`priorityOfEntry`).
 */
export const foldsUnder: Readonly<Partial<Record<UnitEntryId, readonly UnitEntryId[]>>> = {
  /** Tanks that can't be filled or emptied do not change over. */
  'XFER-1': ['AIR-4', 'VENT-1'],
  /** The pair's upper step hides the lower. */
  'MARGIN-1': ['MARGIN-2'],
  'DEW-1': ['DEW-2'],
  'FIL-1': ['FIL-2'],
  /** And without facility water what comes back is hot, and boils sooner. */
  'BOIL-1': ['BOIL-2', 'FAC-1'],
  'BOIL-2': ['FAC-1'],
  'FAC-2': ['FAC-1'],
  /**
   * More air than the sources carry is the worse step of the same opening, and the most urgent: it says that all flow goes and
   * names the same rack. The opening, told first, folds under it once it is seen; so does the flow that it takes. Water that is found and
   * a margin that is gone never fold under air.
   */
  'AIR-1': ['AIR-4'],
  'FLOW-2': ['AIR-4'],
  /** What an opening, or the trip of the source, takes of the reserve and of the flow; and what vapour takes of the reserve where water boils. */
  'AIR-3': ['AIR-4', 'AIR-1', 'VSRC-1', 'BOIL-2', 'BOIL-1'],
  'AIR-2': ['AIR-1', 'AIR-4'],
  'FLOW-1': ['FLOW-2', 'AIR-4', 'AIR-1'],
  'FLOW-3': ['AIR-1', 'FLOW-2'],
  'RTH-1': ['AIR-1', 'FLOW-3'],
  /** Without flow the supply sensor stands in dead water; without facility water, or with warm water, the supply can but warm. */
  'TSUP-2': ['FLOW-2', 'FAC-1'],
  'TSUP-1': ['FLOW-2', 'FAC-1', 'FAC-2', 'TSUP-2'],
  /** What is low is the supply tank that runs empty: nothing is to be topped up. */
  'TANK-3': ['TANK-1'],
  /** A standby starts to carry the air that comes in. */
  'VSRC-2': ['AIR-4', 'AIR-1'],
};

/**
 * Of those, first-outs that may stand for days while the plant runs on: a source that tripped and whose standby carries, a line that
 * nobody can close before the weekend. What begins more than `newsAfterMs` after one that was acknowledged before stands for itself.
 */
export const foldsUntilKnown: Readonly<Partial<Record<UnitEntryId, readonly UnitEntryId[]>>> = {
  'AIR-3': ['AIR-1', 'VSRC-1', 'BOIL-2', 'BOIL-1'],
  'AIR-2': ['AIR-1'],
  'FLOW-1': ['AIR-1'],
  'TSUP-1': ['FAC-2'],
  'VSRC-2': ['AIR-1'],
};
/** Longer than the means by which these consequences are seen take. Own rule. */
export const newsAfterMs = 3_600_000;

/** Of those, first-outs that fold only what is on the branch that they name. */
export const foldsOnBranchOnly: Readonly<Partial<Record<UnitEntryId, readonly UnitEntryId[]>>> = {
  'FLOW-3': ['AIR-1'],
  'RTH-1': ['AIR-1'],
};

/**
 * What falls with the power of a unit, whose gateway lives: pump and source stop together, and that is one event, told by the
 * pump. While it is so and until the loop has come back; the trip of one machine is another thing.
 */
export const foldsOnPowerLost: Readonly<Partial<Record<UnitEntryId, readonly UnitEntryId[]>>> = {
  'VSRC-1': ['PUMP-1'],
  /** As it comes back the standby helps to draw the loop down again. */
  'VSRC-2': ['PUMP-1'],
  /** Nor has the standby power. */
  'PUMP-2': ['PUMP-1'],
  'FLOW-2': ['PUMP-1'],
  'FLOW-1': ['PUMP-1'],
  'FAC-1': ['PUMP-1'],
  /** Water that stood in the racks is hot: it boils sooner under the vacuum that is left, and comes round as the flow returns. */
  'BOIL-2': ['PUMP-1'],
  'BOIL-1': ['PUMP-1'],
  'TSUP-1': ['PUMP-1'],
};

/**
 * Where the pump feeds the loop itself (shape c), its stop and the lost flow are one event; never under a milder alarm, as
 * where a standby runs and the flow is lost all the same. A transfer pump leaves minutes: there the lost flow is the
 * next step, told by itself.
 */
export const foldsOnCirculation: Readonly<Partial<Record<UnitEntryId, readonly UnitEntryId[]>>> = {
  'FLOW-2': ['PUMP-1'],
};

/**
 * Consequences that come after their first-out, and may outlast it: what stood hot in the racks goes round for minutes once the
 * flow is back. They fold where the first-out began before them, or with them, and is as urgent as they are; while it is in alarm, or as long as it is
 * in the list and has been over for less than `outlastsMs`. What begins so long after a first-out that was acknowledged stands for itself.
 */
export const foldsUnderEarlier: Readonly<Partial<Record<UnitEntryId, readonly UnitEntryId[]>>> = {
  'BOIL-2': ['AIR-4', 'PUMP-1', 'FLOW-2'],
  'BOIL-1': ['AIR-4', 'PUMP-1', 'FLOW-2'],
  'TSUP-1': ['PUMP-1', 'FLOW-2', 'VSRC-1'],
  /** A pump that cavitates or stands moves too little: its tank runs empty, and then the flow goes. A tank that is empty feeds no flow. */
  'TANK-1': ['BOIL-2', 'PUMP-1'],
  'FLOW-2': ['BOIL-2'],
  'FLOW-1': ['BOIL-2', 'TANK-1', 'PUMP-1', 'FLOW-2'],
  /** And a separator that is too full fills the trap of the source, which then carries less. */
  'AIR-3': ['FLOW-2', 'TANK-2'],
  /** That no standby is there, the trip of the source tells. One that starts as the loop comes back only helps to draw it down again. */
  'PUMP-2': ['VSRC-1'],
  'VSRC-2': ['VSRC-1', 'PUMP-1', 'FLOW-2', 'MARGIN-2'],
  /** Levels come back minutes after what moved them; without vacuum the water goes where the pump puts it. Nothing is to be topped up. */
  'TANK-3': ['VSRC-1', 'PUMP-1', 'TANK-1', 'AIR-4', 'AIR-1'],
  'TANK-2': ['PUMP-1', 'FLOW-2'],
  /** Alternating tanks that hold too much or too little change over too often. */
  'XFER-1': ['TANK-2', 'TANK-3'],
  /** The first action there is to change over the filter. */
  'FIL-2': ['TANK-1'],
};
/** Transit through the loop, and the lags of pipes and sensors, some times over. Own rule. */
export const outlastsMs = 300_000;
/** A lost flow stands for itself as soon as it does not come back with what took it. Own rule. */
export const flowOutlastsMs = 30_000;

/** Of those, what follows only where it is the inlet of the pump that boils, and nobody had acknowledged that before it began. */
export const foldsAtPumpInletOnly: Readonly<Partial<Record<UnitEntryId, readonly UnitEntryId[]>>> = {
  'TANK-1': ['BOIL-2'],
  'FLOW-2': ['BOIL-2'],
  'FLOW-1': ['BOIL-2'],
};

/**
 * Sensors that such an alarm drives out of their range, by point: the meter of the exhaust by the air of an opening, the level by the water that
 * it pushes up or that the pump leaves. Nothing is wrong with them, and nobody is to look at their wiring first. A sensor that is lost
 * more than `newsAfterMs` after one that was acknowledged stands for itself.
 */
export const drivesOutOfRange: Readonly<Record<string, readonly UnitEntryId[]>> = {
  'vacuum.exhaustFlow': ['AIR-4', 'AIR-1'],
  'separator.level': ['AIR-4', 'AIR-1', 'PUMP-1', 'TANK-2', 'VSRC-1'],
};

/** Consequences in another unit of the same loop: they fold under the first-out wherever on the loop it stands, while the sum of its levels stands. */
export const foldsAcrossLoop: Readonly<Partial<Record<UnitEntryId, readonly UnitEntryId[]>>> = {
  /** Water that is missing here has walked to where it is too much. */
  'TANK-3': ['TANK-2'],
};

/**
 * One opening is felt by every unit of its loop, and told once: a unit that names none of its branches folds under one that
 * does, or else under the one that told it first, where both began within `airOfOneOpeningMs`. Who names a branch of its own never folds;
 * a sign that is weak beside that of another unit names none (`outweighed`).
 */
export const airAcrossLoop: readonly UnitEntryId[] = ['AIR-1', 'AIR-4'];
export const airOfOneOpeningMs = 10_000;

/** What may come over a whole hall at once. */
export type CommonCause =
  /** Whatever it is: units do not fall ill together by chance within that time. */
  | 'any'
  /** Pump and vacuum source of the unit stopped together. */
  | 'powerLost'
  /** Good barometers have fallen, and the unit’s own pressures have not risen in their stead. */
  | 'weather'
  /** The hall’s dew point has risen, and the unit’s own surfaces have not cooled in its stead. */
  | 'humidity';

/**
 * One cause in the hall, and every unit tells of it: the first unit's alarm is the first-out, those of the other units fold
 * under it where they came within `withinMs` of it and the cause explains both.
 */
export interface AcrossHall {
  readonly withinMs: number;
  readonly cause: CommonCause;
}

export const foldsAcrossHall: Readonly<Partial<Record<UnitEntryId, AcrossHall>>> = {
  /** A chiller or a facility pump serves the hall. */
  'FAC-1': { withinMs: 60_000, cause: 'any' },
  'FAC-2': { withinMs: 600_000, cause: 'any' },
  'TSUP-2': { withinMs: 60_000, cause: 'any' },
  'TSUP-1': { withinMs: 60_000, cause: 'any' },
  /** One failure of power. */
  'PUMP-1': { withinMs: 10_000, cause: 'powerLost' },
  /** One hall has one air. */
  'DEW-2': { withinMs: 1_800_000, cause: 'humidity' },
  'DEW-1': { withinMs: 1_800_000, cause: 'humidity' },
  /** A low takes the margin of every loop with absolute set points. A margin that is gone is told by each. */
  'MARGIN-1': { withinMs: 86_400_000, cause: 'weather' },
};
