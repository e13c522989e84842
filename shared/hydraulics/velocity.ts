/** Mean velocity in a cross-section, m/s: v = q/A (continuity). */
export const meanVelocity = (flowM3PerS: number, areaM2: number): number => flowM3PerS / areaM2;

export const circleArea = (bore: number): number => (Math.PI / 4) * bore * bore;

/** Hydraulic diameter of a rectangular channel, m: 4 A/P = 2 a b/(a + b) (White, Fluid Mechanics, section 6.6). */
export const hydraulicDiameterOfRectangle = (width: number, height: number): number =>
  (2 * width * height) / (width + height);

/** Velocity over what is permissible at its temperature. */
export const velocityShare = (velocity: number, permissible: number): number => velocity / permissible;
