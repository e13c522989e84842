import type { Site } from '@ebbline/shared/contract/http-api';
import { pointDefinition } from '@ebbline/shared/contract/point-table';

type SiteUnit = Site['units'][number];

/** What a point is called on a screen; a branch's or plate's own name follows the title. */
export function pointTitle(id: string, unit: SiteUnit | undefined): string {
  const title = pointDefinition(id)?.title ?? id;
  const holder = /^(branch|plate)\.([^.]+)\./.exec(id);
  if (holder === null) return title;
  const [, kind, part = ''] = holder;
  const named = kind === 'branch' ? unit?.branches : unit?.plates;
  return `${title}, ${named?.find((one) => one.id === part)?.name ?? part}`;
}
