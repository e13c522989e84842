import type { Site } from '@ebbline/shared/contract/http-api';
import type { PartGroup } from '@ebbline/shared/contract/point-table';
import { pointDefinition, splitPoint } from '@ebbline/shared/contract/point-table';
import { shapeWords } from './shape-words';

type SiteUnit = Site['units'][number];

const listOf = {
  node: 'nodes',
  branch: 'branches',
  server: 'servers',
  plate: 'plates',
  tank: 'tanks',
} as const satisfies {
  readonly [G in PartGroup]: keyof SiteUnit;
};

/** What a point is called on a screen, in the words of the unit's plant shape; the own name of a wetted place, branch, server, plate or tank follows the title. */
export function pointTitle(id: string, unit: SiteUnit | undefined): string {
  const title = shapeWords(pointDefinition(id)?.title ?? id, unit?.shape);
  const part = splitPoint(id);
  if (part === null) return title;
  const named = unit?.[listOf[part.group]];
  return `${title}, ${named?.find((one) => one.id === part.id)?.name ?? part.id}`;
}
