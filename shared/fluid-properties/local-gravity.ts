import type { Metre } from '../units/quantity';

/** GRS 80 (Moritz 1980): normal gravity at the equator, m/s²; k and e² of Somigliana's equation; free-air gradient, 1/s². */
const equatorMPerS2 = 9.7803267715;
const somiglianaK = 0.001931851353;
const eccentricitySquared = 0.0066943800229;
const freeAirGradient = 3.086e-6;

/** Normal gravity, m/s², by latitude (degrees) and height: 9.780 at the equator to 9.832 at the poles. Somigliana's equation with the figures of GRS 80. */
export function localGravity(latitudeDegrees: number, height: Metre): number {
  const sine = Math.sin((latitudeDegrees * Math.PI) / 180);
  const square = sine * sine;
  const atEllipsoid = (equatorMPerS2 * (1 + somiglianaK * square)) / Math.sqrt(1 - eccentricitySquared * square);
  return atEllipsoid - freeAirGradient * height;
}
