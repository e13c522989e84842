/** Colours as WCAG 2.2, CIE 15 and published models of colour vision see them. Each formula names its source. */
export type Rgb = readonly [number, number, number];

const toLinear = (channel: number): number =>
  channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;

/** `#rrggbb` to linear sRGB, 0 to 1 (IEC 61966-2-1). */
export function linear(hex: string): Rgb {
  const at = (from: number): number => toLinear(parseInt(hex.slice(from, from + 2), 16) / 255);
  return [at(1), at(3), at(5)];
}

const hexOf = (channel: number): string =>
  Math.round(Math.min(1, Math.max(0, channel)) * 255)
    .toString(16)
    .padStart(2, '0');

/**
 * What a browser shows of a colour that is laid over another, in sRGB as it is encoded (CSS Compositing Level 1; CSS
 * Color 5 for `color-mix(in srgb, …)`). @param share of the front colour, 0 to 1
 */
export function mixed(front: string, ground: string, share: number): string {
  const at = (hex: string, from: number): number => parseInt(hex.slice(from, from + 2), 16) / 255;
  const channel = (from: number): string => hexOf(share * at(front, from) + (1 - share) * at(ground, from));
  return `#${channel(1)}${channel(3)}${channel(5)}`;
}

/** WCAG 2.2, definitions of relative luminance and contrast ratio. */
export function contrast(one: string, other: string): number {
  const luminance = ([r, g, b]: Rgb): number => 0.2126 * r + 0.7152 * g + 0.0722 * b;
  const [low = 0, high = 0] = [luminance(linear(one)), luminance(linear(other))].sort((a, b) => a - b);
  return (high + 0.05) / (low + 0.05);
}

/** Machado, Oliveira, Fernandes 2009, IEEE TVCG 15(6), severity 1.0, on linear RGB; matrices from memory. */
export const colourVisions = {
  'usual eyes': [1, 0, 0, 0, 1, 0, 0, 0, 1],
  protanopia: [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998],
  deuteranopia: [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.01182, 0.04294, 0.968881],
  tritanopia: [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.3039],
} as const;

export function through(matrix: readonly number[], [r, g, b]: Rgb): Rgb {
  const row = (at: number): number => {
    const sum = (matrix[at] ?? 0) * r + (matrix[at + 1] ?? 0) * g + (matrix[at + 2] ?? 0) * b;
    return Math.min(1, Math.max(0, sum));
  };
  return [row(0), row(3), row(6)];
}

/** CIE 15: linear sRGB (D65) to L*a*b*. */
export function lab([r, g, b]: Rgb): Rgb {
  const f = (t: number): number => (t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116);
  const x = f((0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.9505);
  const y = f(0.2126 * r + 0.7152 * g + 0.0722 * b);
  const z = f((0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.089);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

const degrees = (radians: number): number => (radians * 180) / Math.PI;
const radians = (angle: number): number => (angle * Math.PI) / 180;

/** CIEDE2000 with all weights 1 (ISO/CIE 11664-6:2014), written after Sharma, Wu, Dalal 2005, Color Research and Application 30(1). */
export function ciede2000([l1, a1, b1]: Rgb, [l2, a2, b2]: Rgb): number {
  const seventh = (c: number): number => Math.sqrt(c ** 7 / (c ** 7 + 25 ** 7));
  const g = 0.5 * (1 - seventh((Math.hypot(a1, b1) + Math.hypot(a2, b2)) / 2));
  const polar = (a: number, b: number): readonly [chroma: number, hue: number] => {
    const reach = (1 + g) * a;
    const chroma = Math.hypot(reach, b);
    return [chroma, chroma === 0 ? 0 : (degrees(Math.atan2(b, reach)) + 360) % 360];
  };
  const [c1, h1] = polar(a1, b1);
  const [c2, h2] = polar(a2, b2);
  const grey = c1 * c2 === 0;
  const apart = h2 - h1;
  const turn = grey ? 0 : Math.abs(apart) <= 180 ? apart : apart > 180 ? apart - 360 : apart + 360;
  const [dl, dc, dh] = [l2 - l1, c2 - c1, 2 * Math.sqrt(c1 * c2) * Math.sin(radians(turn / 2))];
  const [l, c] = [(l1 + l2) / 2, (c1 + c2) / 2];
  const h = grey
    ? h1 + h2
    : Math.abs(apart) <= 180
      ? (h1 + h2) / 2
      : h1 + h2 < 360
        ? (h1 + h2 + 360) / 2
        : (h1 + h2 - 360) / 2;
  const cos = (angle: number): number => Math.cos(radians(angle));
  const t = 1 - 0.17 * cos(h - 30) + 0.24 * cos(2 * h) + 0.32 * cos(3 * h + 6) - 0.2 * cos(4 * h - 63);
  const sl = 1 + (0.015 * (l - 50) ** 2) / Math.sqrt(20 + (l - 50) ** 2);
  const sc = 1 + 0.045 * c;
  const sh = 1 + 0.015 * c * t;
  const rotation = -Math.sin(radians(60 * Math.exp(-(((h - 275) / 25) ** 2)))) * 2 * seventh(c);
  return Math.sqrt((dl / sl) ** 2 + (dc / sc) ** 2 + (dh / sh) ** 2 + rotation * (dc / sc) * (dh / sh));
}

/** How far apart two tokens look to such eyes. */
export function apartFor(vision: keyof typeof colourVisions, one: string, other: string): number {
  const seen = (hex: string): Rgb => lab(through(colourVisions[vision], linear(hex)));
  return ciede2000(seen(one), seen(other));
}
