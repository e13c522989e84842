/**
 * Points that `deriveUnit` and `deriveHall` write, in the order in which they are worked out. The site
 * compiler gives each a slot; `branch.<id>.…` once for every branch. A slot that is left out is skipped.
 */
export const derivedPointIds = {
  hall: ['dewPoint'],
  unit: [
    'massFlow',
    'heatRemoved',
    'branch.<id>.heatRemoved',
    'chipPower',
    'capture',
    'approach',
    'vacuumMargin',
    'vacuumMarginWorst',
    'boilingMargin',
    'lowerWallMargin',
    'drivingPressure',
    'gasLoad',
    'dewPointMargin',
  ],
} as const satisfies { readonly hall: readonly string[]; readonly unit: readonly string[] };
