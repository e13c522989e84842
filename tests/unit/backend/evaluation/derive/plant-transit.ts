import { deriveUnit } from '../../../../../backend/src/evaluation/derive/derive-unit';
import { buildSite, type BuiltSite } from '../../../../helpers/compiled-site-builder';
import { richOptions } from '../../../../helpers/rich-unit-m';
import { plantOf, RunningPlant } from '../../../simulator/run-plant';

/** One second of unit M as the simulated plant runs and as it is judged. */
export interface Second {
  readonly heatW: number;
  readonly expandedW: number;
  readonly capture: number;
  readonly captureU: number;
  readonly chipW: number;
  /** Heat by what reads now, as it would be without the transit. */
  readonly unalignedW: number;
  readonly reasons: number;
  readonly balance: number;
  /** UA as derived with its uncertainty, and as the plant has it at the flows of this second, W/K. */
  readonly ua: number;
  readonly uaU: number;
  readonly plantUa: number;
}

const racks = Array.from({ length: 8 }, (_, i) => `r${i + 1}`);

/** Unit M with the volumes of the simulated plant: pipes 79 + 79 + 8 × 15 L, 800 chips of 350 J/K, all water 488 L. */
export function siteOfPlant(): BuiltSite {
  const rich = richOptions({ branches: racks });
  return buildSite({
    ...rich,
    plates: [],
    without: ['supply.pressure', 'return.pressure', 'pump.inlet.pressure'],
    design: {
      ...rich.design,
      volumes: { ...rich.design?.volumes, supplyToReturnM3: 0.278, waterM3: 0.488 } as never,
      transit: { platesToReturnM3: 0.139, storedHeatJPerK: 280_000, frontSpread: 0.25, plateLagS: null, sensorLagS: 0 },
    },
  });
}

/** UA of the simulated exchanger as its own table has it: half of the resistance on each side, by flow to the power 0.75. */
function plantUa({ parameters, state }: RunningPlant): number {
  const { uaWPerK, referenceKgPerS } = parameters.exchanger;
  const film = (kgPerS: number): number => 0.5 * (referenceKgPerS / kgPerS) ** 0.75;
  return uaWPerK / (film(998 * state.last.transferM3PerS) + film(state.last.facilityKgPerS));
}

export class JudgedPlant {
  readonly plant = new RunningPlant(plantOf('M'));
  readonly built = siteOfPlant();
  private second = 0;

  run(
    seconds: number,
    change: (built: BuiltSite, second: number) => void = () => undefined,
    stopped = false,
  ): Second[] {
    return Array.from({ length: seconds }, () => {
      this.second += 1;
      const readings = this.plant.at(this.second);
      for (const [point, value] of readings)
        if (this.built.site.slots.pointId.includes(point)) this.built.set(point, value, this.second * 1000);
      change(this.built, this.second);
      deriveUnit(this.built.site, this.built.state, 0, this.second * 1000, stopped);
      const value = (point: string): number => this.built.value(point);
      return {
        heatW: value('heatRemoved'),
        expandedW: this.built.expandedUncertainty('heatRemoved'),
        capture: value('capture'),
        captureU: this.built.expandedUncertainty('capture'),
        chipW: value('chipPower'),
        unalignedW: value('massFlow') * 4179 * (value('return.temperature') - value('supply.temperature')),
        reasons: this.built.reasons('heatRemoved'),
        balance: value('heatBalance'),
        ua: value('ua'),
        uaU: this.built.expandedUncertainty('ua'),
        plantUa: plantUa(this.plant),
      };
    });
  }
}
