import { beforeAll, expect, it } from 'vitest';
import {
  geopotentialAltitude,
  standardPressure,
  standardTemperature,
} from '@ebbline/shared/fluid-properties/standard-atmosphere';
import { airThroughOpening, criticalPressureRatio } from '@ebbline/shared/hydraulics/air-through-opening';
import { frictionFactor, frictionLoss, reynoldsNumber } from '@ebbline/shared/hydraulics/pipe-friction';
import { celsius, metre, pascalAbsolute } from '@ebbline/shared/units/quantity';
import { pathOf, suiteNeeding } from '../helpers/requirements';
import { askPython, range, worstDifference, worstShare } from './ask-python';

const reynolds = range(Math.log10(5_000), 8, 40).map((power) => 10 ** power);
const laminar = range(1, 2000, 20);
const roughness = [0, 1e-6, 1e-4, 1e-3, 0.01, 0.05];
const altitudes = range(-1_000, 11_000, 60);
const kappas = range(1.1, 1.67, 20);
/** Loop pressures below ambient that do not choke, and ambients from sea level to 3 000 m. */
const ambients = [101_325, 84_556, 70_108];
const shares = range(0.55, 0.98, 15);

const script = `
from fluids import friction_factor, ATMOSPHERE_1976, one_phase_dP, Reynolds
from fluids.compressible import P_critical_flow
from fluids.flow_meter import differential_pressure_meter_dP, nozzle_expansibility
answer = {
  "turbulent": [friction_factor(Re=Re, eD=eD) for Re in given["reynolds"] for eD in given["roughness"]],
  "laminar": [friction_factor(Re=Re) for Re in given["laminar"]],
  "pressure": [ATMOSPHERE_1976(Z).P for Z in given["altitudes"]],
  "temperature": [ATMOSPHERE_1976(Z).T - 273.15 for Z in given["altitudes"]],
  "critical": [P_critical_flow(P=1.0, k=k) for k in given["kappas"]],
  "loss": [one_phase_dP(m=3.0 / 3.6 * 0.994, rho=994.0, mu=7.19e-4, D=D, roughness=1.5e-6, L=10.0) for D in given["bores"]],
  "expansibility": [nozzle_expansibility(D=1.0, Do=1e-4, P1=p, P2=p * s, k=1.4) for p in given["ambients"] for s in given["shares"]],
}
`;
const bores = range(0.015, 0.1, 20);

suiteNeeding(['python-fluids'], 'flow and air, as the Python library fluids has them', () => {
  let theirs: Record<string, readonly number[]> = {};
  const of = (name: string): readonly number[] => theirs[name] ?? [];

  beforeAll(async () => {
    theirs = await askPython(pathOf('python-fluids'), script, {
      reynolds,
      laminar,
      roughness,
      altitudes,
      kappas,
      bores,
      ambients,
      shares,
    });
  });

  /** Theirs solves Colebrook by Clamond's method, ours by Newton's: one equation, so rounding only. */
  it('have one friction factor, from smooth to very rough, up to a Reynolds number of 10⁸', () => {
    const ours = reynolds.flatMap((re) => roughness.map((share) => frictionFactor(re, share)));
    expect(worstShare(ours, of('turbulent'))).toBeLessThan(1e-9);
    expect(
      worstShare(
        laminar.map((re) => frictionFactor(re, 0)),
        of('laminar'),
      ),
    ).toBeLessThan(1e-12);
  });

  it('have one pressure loss of 10 m of smooth tube, from 15 to 100 mm', () => {
    const ours = bores.map((bore) => {
      const velocity = ((3 / 3.6) * 0.994) / 994 / ((Math.PI * bore * bore) / 4);
      const factor = frictionFactor(reynoldsNumber(velocity, bore, 994, 7.19e-4), 1.5e-6 / bore);
      return frictionLoss(factor, 10, bore, 994, velocity);
    });
    expect(worstShare(ours, of('loss'))).toBeLessThan(1e-9);
  });

  /** The US Standard Atmosphere of 1976 is that of ISO 2533 here, with a gas constant that is rounded in its sixth digit. */
  it('have one standard atmosphere from −1 000 to 11 000 m', () => {
    const levels = altitudes.map((z) => geopotentialAltitude(metre(z)));
    expect(worstShare(levels.map(standardPressure), of('pressure'))).toBeLessThan(1e-5);
    expect(worstDifference(levels.map(standardTemperature), of('temperature'))).toBeLessThan(0.002);
  });

  it('choke at one pressure ratio', () => {
    expect(worstShare(kappas.map(criticalPressureRatio), of('critical'))).toBeLessThan(1e-12);
  });

  /** ε of ISO 5167-3 for a nozzle with β → 0 is the isentropic flow over that of a liquid: q = ε A √(2 ρ Δp). */
  it('let one flow of air through an opening that does not choke', () => {
    const expansibility = of('expansibility');
    const flows = ambients.flatMap((ambient) =>
      shares.map((share) =>
        airThroughOpening(1, 1e-4, pascalAbsolute(ambient), celsius(20), pascalAbsolute(ambient * share)),
      ),
    );
    const expected = ambients.flatMap((ambient, a) =>
      shares.map((share, s) => {
        const density = ambient / (287.05287 * 293.15);
        const liquid = 1e-4 * Math.sqrt(2 * density * ambient * (1 - share));
        return (expansibility[a * shares.length + s] ?? Number.NaN) * liquid;
      }),
    );
    expect(worstShare(flows, expected)).toBeLessThan(1e-6);
  });
});
