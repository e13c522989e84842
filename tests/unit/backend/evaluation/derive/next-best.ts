/**
 * Points that keep a value while a measured point that they name is lost, and why that is right: another way that their row lists, or a
 * part that is left out. Everything else that rests on it has no value.
 */
export const nextBest: Readonly<Record<string, { readonly points: readonly string[]; readonly why: string }>> = {
  'hall.temperature': {
    points: [
      'equivalentHole',
      'equivalentHoleSupply',
      'largestOpeningCarried',
      'openingsCarried',
      'openingsCarriedAll',
    ],
    why: 'air of a usual room in its place: 0.17 % of the flow through an opening a kelvin',
  },
  'ambient.pressure': {
    points: [
      'branch.r1.vacuumMargin',
      'equivalentHole',
      'equivalentHoleSupply',
      'largestOpeningCarried',
      'openingsCarried',
      'openingsCarriedAll',
      'vacuumMargin',
      'vacuumMarginWorst',
    ],
    why: 'the standard atmosphere of the site’s height, with an uncertainty of weather; marked as estimated',
  },
  'plate.p1.power': {
    points: ['lowerWallMargin', 'rideThroughPlate', 'temperatureOnFans'],
    why: 'the other plate stands for itself, marked as uncertain; no wall resistance is stated, so no plate is a wall',
  },
  'plate.p2.power': {
    points: ['lowerWallMargin', 'rideThroughPlate', 'temperatureOnFans'],
    why: 'as the first plate',
  },
  'plate.p1.temperature': {
    points: ['rideThroughPlate'],
    why: 'the other plate stands for itself, marked as uncertain',
  },
  'plate.p2.temperature': { points: ['rideThroughPlate'], why: 'as the first plate' },
  'vacuum.running': {
    points: [
      'equivalentHole',
      'equivalentHoleSupply',
      'inLeak',
      'largestOpeningCarried',
      'openingsCarried',
      'openingsCarriedAll',
      'vacuumReserve',
      'vacuumReserveAll',
    ],
    why: 'tells pauses of a source that starts and stops; this one runs by speed, and has an exhaust meter',
  },
  'topUp.volume': {
    points: ['equivalentHole', 'equivalentHoleSupply', 'gasAllowance', 'inLeak', 'timeToFull'],
    why: 'a lost counter brings no air of new water that would be allowed, so that a leak is told rather too early',
  },
  'separator.level': {
    points: [
      'equivalentHole',
      'equivalentHoleSupply',
      'inLeak',
      'largestOpeningCarried',
      'openingsCarried',
      'openingsCarriedAll',
      'vacuumReserve',
      'vacuumReserveAll',
    ],
    why: 'the gas room of the usual level, marked as uncertain',
  },
  'supplyTank.level': { points: ['timeToFull'], why: 'the separator’s own rate, where the loop’s is not known' },
  'branch.r1.isolated': {
    points: ['branch.r1.flowShare', 'branch.r1.resistanceRatio', 'expectedFlow', 'flowShare'],
    why: 'a branch whose valves nobody tells of is taken as open, so that a lost flow is still found',
  },
  'branch.r2.isolated': {
    points: ['branch.r2.flowShare', 'branch.r2.resistanceRatio', 'expectedFlow', 'flowShare'],
    why: 'as the first branch',
  },
};
