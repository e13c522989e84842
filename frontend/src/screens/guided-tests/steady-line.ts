import type { GuidedSteady } from '@ebbline/shared/contract/guided-test';

/** The picture of one reading: points in a box of `width` × `height`, and the band that its drift has to keep. */
export interface SteadyPicture {
  readonly points: string;
  /** Top and height of the band of ± allowed about the newest means. */
  readonly bandY: number;
  readonly bandHeight: number;
  /** Left edge of the window that has to be steady. */
  readonly windowX: number;
}

/** Null before two means are there. */
export function steadyPicture(
  { seconds, means, allowed }: Pick<GuidedSteady, 'seconds' | 'means' | 'allowed'>,
  windowS: number,
  width: number,
  height: number,
): SteadyPicture | null {
  const last = seconds.at(-1);
  const first = seconds[0];
  if (first === undefined || last === undefined || means.length < 2) return null;
  const from = Math.min(first, last - windowS);
  const inWindow = means.filter((_, i) => (seconds[i] ?? 0) > last - windowS);
  const middle = inWindow.reduce((sum, one) => sum + one, 0) / inWindow.length;
  const half = 1.15 * Math.max(allowed, ...means.map((one) => Math.abs(one - middle)));
  const x = (s: number): number => ((s - from) / Math.max(1, last - from)) * width;
  const y = (value: number): number => height / 2 - ((value - middle) / half) * (height / 2);
  const round = (value: number): number => Math.round(value * 10) / 10;
  return {
    points: means.map((one, i) => `${round(x(seconds[i] ?? from))},${round(y(one))}`).join(' '),
    bandY: round(y(middle + allowed)),
    bandHeight: round((allowed / half) * height),
    windowX: round(Math.max(0, x(last - windowS))),
  };
}
