import type { Site } from '@ebbline/shared/contract/http-api';
import { pointTitle } from './point-title';

/** Where something is, as people know the place: a branch by its name, a point by its title, anything else as it came. */
export function placeTitle(where: string, unit: Site['units'][number] | undefined): string {
  return unit?.branches.find(({ id }) => id === where)?.name ?? pointTitle(where, unit);
}
