/** A tank as it is drawn: water to its level on a scale that all tanks of a picture share. px from the top. */
export interface TankPicture {
  /** Top of the water; null where the level is not known. */
  readonly waterY: number | null;
  readonly marks: readonly { readonly y: number; readonly level: number; readonly side: 'below' | 'above' }[];
}

export interface LevelMark {
  readonly level: number;
  readonly side: 'below' | 'above';
}

const stepM = 0.2;

/** Top of the shared scale, m: over the highest level and mark, in whole steps so that it does not move with the water. */
export function tankScale(levels: readonly (number | null)[], marks: readonly LevelMark[]): number {
  const highest = Math.max(0, ...levels.map((level) => level ?? 0), ...marks.map(({ level }) => level));
  return Math.max(stepM, Math.ceil((highest * 1.15) / stepM - 1e-9) * stepM);
}

/** @param topM of the scale @param height of the drawn tank, px */
export function tankPicture(
  level: number | null,
  marks: readonly LevelMark[],
  topM: number,
  height: number,
): TankPicture {
  const toY = (metres: number): number => height * (1 - Math.min(1, Math.max(0, metres / topM)));
  return {
    waterY: level === null ? null : toY(level),
    marks: marks.map((mark) => ({ ...mark, y: toY(mark.level) })),
  };
}
