/** Points that are looked at together. */
export interface PreparedView {
  readonly title: string;
  readonly points: readonly string[];
}

export const preparedViews: readonly PreparedView[] = [
  { title: 'Heat against chip power', points: ['heatRemoved', 'chipPower', 'capture'] },
  {
    title: 'Margins',
    points: ['vacuumMargin', 'vacuumMarginWorst', 'boilingMargin', 'lowerWallMargin', 'drivingPressure'],
  },
  { title: 'Air', points: ['gasLoad', 'gasAllowance', 'inLeak', 'vacuumReserve', 'separator.pressure'] },
  { title: 'Tanks', points: ['supplyTank.level', 'separator.level', 'waterVolume', 'topUpRate'] },
  {
    title: 'Temperatures',
    points: [
      'supply.temperature',
      'return.temperature',
      'facility.supply.temperature',
      'facility.return.temperature',
      'approach',
    ],
  },
];

/** The views that a unit has points for, with those that it has. */
export function viewsFor(known: readonly string[]): readonly PreparedView[] {
  const has = new Set(known);
  return preparedViews
    .map(({ title, points }) => ({ title, points: points.filter((point) => has.has(point)) }))
    .filter(({ points }) => points.length > 1);
}
