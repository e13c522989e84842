/** Darcy friction factors (four times Fanning's). */

/** Laminar flow, f = 64/Re (Hagen–Poiseuille; White, Fluid Mechanics, eq. 6.13). */
export const laminarFrictionFactor = (reynolds: number): number => 64 / reynolds;

/** Below this flow is laminar in a pipe (White, Fluid Mechanics, section 6.1). */
export const laminarBelow = 2300;

/**
 * Turbulent flow, Colebrook–White (1939): 1/√f = −2 log₁₀(ε/(3.7 D) + 2.51/(Re √f)), with Prandtl's smooth pipe at ε = 0. Solved by Newton
 * from Haaland's explicit form; after three steps the error is below 1e-12. `relativeRoughness` = ε/D, 0 … 0.05.
 */
export function turbulentFrictionFactor(reynolds: number, relativeRoughness: number): number {
  const rough = relativeRoughness / 3.7;
  let x = -1.8 * Math.log10(rough ** 1.11 + 6.9 / reynolds);
  for (let step = 0; step < 3; step += 1) {
    const inside = rough + (2.51 * x) / reynolds;
    const off = x + 2 * Math.log10(inside);
    x -= off / (1 + (2 * 2.51) / (Math.LN10 * reynolds * inside));
  }
  return 1 / (x * x);
}

/** Of whichever flow it is. Between laminar and turbulent the turbulent factor is taken, the larger one. */
export const frictionFactor = (reynolds: number, relativeRoughness: number): number =>
  reynolds < laminarBelow ? laminarFrictionFactor(reynolds) : turbulentFrictionFactor(reynolds, relativeRoughness);

/** Re = v D/ν; for channels that are not round D is the hydraulic diameter. */
export const reynoldsNumber = (velocity: number, diameter: number, density: number, viscosity: number): number =>
  (density * velocity * diameter) / viscosity;

/** Δp = f (L/D) ρ v²/2, Pa (Darcy–Weisbach). */
export const frictionLoss = (
  factor: number,
  length: number,
  diameter: number,
  density: number,
  velocity: number,
): number => (factor * (length / diameter) * density * velocity * velocity) / 2;
