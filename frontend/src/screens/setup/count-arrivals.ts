import type { SetupPoint } from '@ebbline/shared/contract/setup';

/** How many of the points fare how, in a line. */
export function countArrivals(points: readonly Pick<SetupPoint, 'arriving'>[]): string {
  const of = (state: SetupPoint['arriving']): number => points.filter(({ arriving }) => arriving === state).length;
  const [silent, never] = [of('silent'), of('never')];
  return [
    `${of('arriving')} of ${points.length} points arrive`,
    ...(silent > 0 ? [`${silent} fell silent`] : []),
    ...(never > 0 ? [`${never} never came`] : []),
  ].join(', ');
}
