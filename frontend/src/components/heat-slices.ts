import type { Figure } from '@ebbline/shared/contract/live-feed';

export interface HeatPart {
  readonly heat: Figure;
  readonly power: Figure;
}

/** Paths of a box of some width and height, px. */
export interface HeatSlices {
  /** What each unit's chips take up: as wide as their power. */
  readonly power: string;
  /** What is taken off of it: as high as its part, cut at the top. */
  readonly heat: string;
  /** Units whose heat is not known. */
  readonly unknown: string;
}

const round = (px: number): number => Math.round(px * 4) / 4;
const known = ({ value, quality }: Figure): number | null =>
  value === null || quality === 'bad' ? null : Math.max(0, value);

/** Unit by unit from left to right: chip power across, the part of it that is taken off from below. Units without a chip power have no place. */
export function heatSlices(parts: readonly HeatPart[], width: number, height: number): HeatSlices {
  const total = parts.reduce((sum, { power }) => sum + (known(power) ?? 0), 0);
  const paths = { power: '', heat: '', unknown: '' };
  if (total <= 0) return paths;
  let before = 0;
  for (const part of parts) {
    const power = known(part.power) ?? 0;
    if (power === 0) continue;
    const [from, to] = [round((before / total) * width), round(((before + power) / total) * width)];
    before += power;
    const heat = known(part.heat);
    const top = heat === null ? 0 : round(height * (1 - Math.min(1, heat / power)));
    const slice = (y: number): string => `M${from} ${y}H${to}V${height}H${from}Z`;
    paths.power += slice(0);
    if (heat === null) paths.unknown += slice(0);
    else paths.heat += slice(top);
  }
  return paths;
}
