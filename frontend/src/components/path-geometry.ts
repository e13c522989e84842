import { pressureStep } from '../text/display-unit';
import type { PathPlace } from '@ebbline/shared/contract/live-feed';

/** Where the picture of the water's way stands, px. */
export interface PathFrame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** Pa at `top`; `bottom` is vacuum. */
  readonly topPa: number;
}

export interface PlacedPlace {
  readonly place: PathPlace;
  readonly x: number;
  /** Null where the pressure is not known: the line has a gap there. */
  readonly y: number | null;
  /** True where the number stands over the dot, so that it keeps off the line. */
  readonly above: boolean;
}

/** The pressure at the top of the picture: the next label of the axis above everything shown. */
export function topPressure(path: readonly PathPlace[], ambientPa: number | null): number {
  const known = [...path.map((place) => place.pressurePa), ambientPa].filter((pa): pa is number => pa !== null);
  const stepPa = pressureStep();
  return Math.ceil(((known.length === 0 ? 101_325 : Math.max(...known)) + 4_000) / stepPa) * stepPa;
}

export function pathY(frame: PathFrame, pa: number): number {
  return frame.bottom - (pa / frame.topPa) * (frame.bottom - frame.top);
}

/** Even steps along the way: the order matters here, not the metres. */
export function placePath(path: readonly PathPlace[], frame: PathFrame): readonly PlacedPlace[] {
  const step = (frame.right - frame.left) / Math.max(1, path.length);
  const pressureAt = (index: number): number | null => path[index]?.pressurePa ?? null;
  return path.map((place, index) => {
    const own = place.pressurePa;
    const neighbours = [pressureAt(index - 1), pressureAt(index + 1)].filter((pa): pa is number => pa !== null);
    const mean = neighbours.reduce((sum, pa) => sum + pa, 0) / Math.max(1, neighbours.length);
    return {
      place,
      x: frame.left + step * (index + 0.5),
      y: own === null ? null : pathY(frame, own),
      above: own !== null && (neighbours.length === 0 || own >= mean),
    };
  });
}

/** SVG path through the known places; a place without a value breaks it. */
export function linePath(points: readonly { readonly x: number; readonly y: number | null }[]): string {
  let broken = true;
  return points
    .map(({ x, y }) => {
      if (y === null) {
        broken = true;
        return '';
      }
      const command = broken ? 'M' : 'L';
      broken = false;
      return `${command}${x.toFixed(1)} ${y.toFixed(1)}`;
    })
    .join('');
}

/** Neighbouring places inside the unit, as stretches of the picture. */
export function insideStretches(
  placed: readonly PlacedPlace[],
  frame: PathFrame,
): readonly { x: number; width: number }[] {
  const half = (frame.right - frame.left) / Math.max(1, placed.length) / 2;
  const stretches: { x: number; width: number }[] = [];
  for (const { place, x } of placed) {
    if (place.outsideUnit) continue;
    const last = stretches.at(-1);
    if (last !== undefined && Math.abs(last.x + last.width - (x - half)) < 0.5) last.width += 2 * half;
    else stretches.push({ x: x - half, width: 2 * half });
  }
  return stretches;
}

/** The lines under each place: its name, and whether it stands inside the unit. */
export function placeLines(place: Pick<PathPlace, 'name' | 'outsideUnit'>, most: number): readonly string[] {
  return [...wrapName(place.name, most), ...(place.outsideUnit ? [] : wrapName('(inside the unit)', most))];
}

/** A name in lines of at most `most` characters where its words allow. */
export function wrapName(name: string, most: number): readonly string[] {
  const lines: string[] = [];
  for (const word of name.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= most) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
