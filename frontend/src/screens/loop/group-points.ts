import type { Reading } from '@ebbline/shared/contract/reading';

export interface PointGroup {
  readonly id: 'derived' | 'measured' | 'branches' | 'plates';
  readonly title: string;
  readonly points: readonly Reading[];
}

const groups: readonly Pick<PointGroup, 'id' | 'title'>[] = [
  { id: 'derived', title: 'Derived' },
  { id: 'measured', title: 'Measured at the unit and in the hall' },
  { id: 'branches', title: 'Branches' },
  { id: 'plates', title: 'Plates' },
];

function groupOf(point: Reading): PointGroup['id'] {
  if (point.id.startsWith('branch.')) return 'branches';
  if (point.id.startsWith('plate.')) return 'plates';
  return point.kind;
}

/** Points by where they belong, in the order they came; groups without points are left out. */
export function groupPoints(points: readonly Reading[]): readonly PointGroup[] {
  return groups
    .map((group) => ({ ...group, points: points.filter((point) => groupOf(point) === group.id) }))
    .filter((group) => group.points.length > 0);
}
