/** The colours of the theme in force, as a lane is drawn with them. */
export interface LaneInk {
  readonly lines: readonly string[];
  readonly soft: string;
  readonly grid: string;
  readonly ink: string;
  readonly paper: string;
}

export const inkCount = 6;
/** Beyond the inks the same ones come again, broken. */
const dashes: readonly (readonly number[])[] = [[], [7, 4], [2, 4], [9, 3, 2, 3]];

export function readLaneInk(element: Element): LaneInk {
  const style = getComputedStyle(element);
  const of = (name: string): string => style.getPropertyValue(name).trim();
  return {
    lines: Array.from({ length: inkCount }, (_, index) => of(`--line-${index + 1}`)),
    soft: of('--soft'),
    grid: of('--line'),
    ink: of('--ink'),
    paper: of('--paper'),
  };
}

export const dashOf = (ink: number): number[] => [...(dashes[Math.floor(ink / inkCount) % dashes.length] ?? [])];
export const colourOf = (inks: LaneInk, ink: number): string => inks.lines[ink % inkCount] ?? inks.ink;
/** The same ink, faint: for the band from least to most. */
export const faint = (colour: string): string => `${colour}33`;
