import { createPipeline, type CountingPipeline } from '../../../../../backend/src/evaluation/pipeline/create-pipeline';
import type { AlarmRecord, AlarmTransition } from '../../../../../backend/src/evaluation/pipeline/outputs';
import type { CompiledSite } from '../../../../../backend/src/evaluation/site/compiled-site';
import { compiledOrThrow } from '../../../../helpers/small-site';

/** 2026-03-01T00:00:00Z. */
export const startMs = 1_772_323_200_000;

const racks = ['r1', 'r2', 'r3', 'r4'] as const;

const point = (path: string, unit: string, more: object = {}): object => ({ path, unit, ...more });
const pressure = (path: string): object =>
  point(path, 'kPa', { reference: 'absolute', accuracy: '±0.4 kPa', range: '0 to 160 kPa' });

/** The demo plant's unit M: every point that an alarm of this issue looks at, one JSON object a second. */
const unit = (more: object): object => ({
  name: 'Unit',
  hall: 'h',
  gateway: 'g',
  shape: 'a',
  ratedFlow: '346 L/min',
  ratedHeat: '240 kW',
  supplySetPoint: '36.3 °C',
  elevations: {
    supplyTankSurface: '1.0 m',
    separatorSurface: '0.6 m',
    returnInlet: '1.2 m',
    pumpInlet: '0.15 m',
  },
  tanks: { separatorArea: '0.25 m2', supplyArea: '0.3 m2' },
  pump: { npshLimit: '2.1 m', suctionLoss: '2.4 kPa' },
  nodes: {
    floorSupply: { name: 'Supply main under the floor', main: 'supply', elevation: '-0.5 m', loss: '0.8 kPa' },
    topReturn: { name: 'Top of the return manifold', main: 'return', elevation: '2.0 m', loss: '8.9 kPa' },
    floorReturn: { name: 'Return main under the floor', main: 'return', elevation: '-0.5 m', loss: '3.0 kPa' },
  },
  vacuumSource: {
    curve: [
      { pressure: '5 kPa', suction: '10 m3/h' },
      { pressure: '32 kPa', suction: '62 m3/h' },
      { pressure: '101 kPa', suction: '78 m3/h' },
    ],
  },
  branches: Object.fromEntries(racks.map((rack) => [rack, { name: `Rack ${rack.slice(1)}`, ratedFlow: '43 L/min' }])),
  topic: 'plant/{unit}',
  time: { path: 'time', form: 'epochMilliseconds' },
  points: {
    'supply.temperature': point('tSupply', '°C', { accuracy: 'Pt100 A', range: '0 to 90 °C' }),
    'return.temperature': point('tReturn', '°C', { accuracy: 'Pt100 A' }),
    'facility.supply.temperature': point('tFacility', '°C', { accuracy: 'Pt100 A' }),
    'supplyTank.pressure': pressure('pTank'),
    'separator.pressure': pressure('pSeparator'),
    'loop.flow': point('flow', 'L/min', { accuracy: '0.5 % of reading', hose: 'supply' }),
    'separator.level': point('levelSeparator', 'm', { accuracy: '±3 mm' }),
    'supplyTank.level': point('levelTank', 'm', { accuracy: '±3 mm' }),
    'vacuum.speed': point('vacuumSpeed', '%'),
    'vacuum.running': { path: 'vacuumRunning' },
    'pump.running': { path: 'pumpRunning' },
    'water.found': { path: 'water' },
    'branch.*.flow': point('racks.{branch}.flow', 'L/min'),
    'branch.*.return.pressure': pressure('racks.{branch}.p'),
    'branch.*.power': point('racks.{branch}.power', 'kW'),
  },
  ...more,
});

export interface PlantOptions {
  readonly units?: readonly string[];
  /** Put over the unit's own keys. */
  readonly unit?: object;
  /** Put over its points, by point id. */
  readonly points?: object;
  readonly modePoint?: boolean;
  /** Put over the document's own keys, such as loops. */
  readonly document?: object;
}

export function plantSite({
  units = ['m1'],
  unit: more = {},
  points = {},
  modePoint = false,
  document = {},
}: PlantOptions = {}): CompiledSite {
  const one = unit(more) as { points: object };
  const mode = modePoint ? { mode: { path: 'mode' } } : {};
  const whole = { ...one, points: { ...one.points, ...mode, ...points } };
  return compiledOrThrow({
    site: { id: 's', name: 'Site', timeZone: 'UTC', altitude: '0 m' },
    halls: {
      h: {
        name: 'Hall',
        points: {
          'ambient.pressure': {
            topic: 'hall/air',
            path: 'p',
            unit: 'kPa',
            reference: 'absolute',
            accuracy: '±0.1 kPa',
          },
          'hall.temperature': { topic: 'hall/air', path: 't', unit: '°C' },
          'hall.humidity': { topic: 'hall/air', path: 'rh', unit: '%' },
        },
      },
    },
    gateways: { g: { status: { topic: 'gateway/g', online: 'online' } } },
    units: Object.fromEntries(units.map((id) => [id, whole])),
    ...document,
  });
}

/** What a unit sends, in the units of measure of the site file. */
export interface Telemetry {
  tSupply: number | null;
  tReturn: number | null;
  tFacility: number;
  pTank: number;
  pSeparator: number;
  flow: number | null;
  levelSeparator: number;
  levelTank: number;
  vacuumSpeed: number;
  vacuumRunning: boolean;
  pumpRunning: boolean;
  water: boolean | null;
  mode: string;
  racks: Record<string, { flow: number; p: number; power: number }>;
}

/** Unit M as it runs when all is well (parameter set of the demo plant, computed; no published source). */
export const atRest = (): Telemetry => ({
  tSupply: 36.3,
  tReturn: 45,
  tFacility: 30,
  pTank: 74,
  pSeparator: 32,
  flow: 346,
  levelSeparator: 0.6,
  levelTank: 0.5,
  vacuumSpeed: 20,
  vacuumRunning: true,
  pumpRunning: true,
  water: false,
  mode: 'running',
  racks: Object.fromEntries(racks.map((rack) => [rack, { flow: 43, p: 43, power: 30 }])),
});

export interface HallAir {
  p: number;
  t: number;
  rh: number;
}

/** A pipeline on a plant that a test moves second by second. `second` counts from the start. */
export class Plant {
  pipeline: CountingPipeline;
  readonly telemetry: Record<string, Telemetry> = {};
  readonly air: HallAir = { p: 101.3, t: 27, rh: 40 };
  readonly transitions: AlarmTransition[] = [];
  /** Units that send nothing. */
  readonly silent = new Set<string>();
  /** The hall sends nothing. */
  hallSilent = false;
  second = 0;

  constructor(readonly site: CompiledSite = plantSite()) {
    this.pipeline = createPipeline(site, { clock: 'wall', startMs });
    for (const { id } of site.units) this.telemetry[id] = atRest();
  }

  get m1(): Telemetry {
    return this.telemetry['m1'] as Telemetry;
  }

  get nowMs(): number {
    return startMs + this.second * 1000;
  }

  send(topic: string, payload: unknown): void {
    const bytes = new TextEncoder().encode(typeof payload === 'string' ? payload : JSON.stringify(payload));
    const acceptance = this.pipeline.accept({ topic, payload: bytes, retained: false }, this.nowMs);
    const fault = acceptance.refusal;
    // A sensor that sends nothing is a case of its own; anything else is a mistake of the test.
    if (fault !== null && fault.code !== 'FIELD_MISSING') throw new Error(fault.message);
  }

  /** Sends what all units measure now, then lets a second pass; `change` moves the plant before each. */
  run(seconds: number, change: (second: number) => void = () => undefined): this {
    for (let i = 0; i < seconds; i += 1) {
      change(i);
      if (!this.hallSilent) this.send('hall/air', this.air);
      for (const [id, telemetry] of Object.entries(this.telemetry)) {
        if (!this.silent.has(id)) this.send(`plant/${id}`, { time: this.nowMs, ...withoutNulls(telemetry) });
      }
      this.second += 1;
      this.transitions.push(...this.pipeline.advance(this.nowMs));
    }
    return this;
  }

  /** Another site takes the place of this one; units that it has no more send nothing from now on. */
  reload(site: CompiledSite): this {
    this.pipeline.drainHistory(this.nowMs, true);
    this.pipeline = this.pipeline.goOn(site, this.nowMs);
    const ids = site.units.map(({ id }) => id);
    for (const id of Object.keys(this.telemetry)) if (!ids.includes(id)) Reflect.deleteProperty(this.telemetry, id);
    for (const id of ids) this.telemetry[id] ??= atRest();
    return this;
  }

  standing(entry: string): AlarmRecord | undefined {
    return this.pipeline.standing().find((record) => record.entry === entry);
  }

  entries(): string[] {
    return this.pipeline.standing().map((record) => record.entry);
  }
}

/** A null stands for a sensor whose value is left out of the message. */
function withoutNulls(telemetry: Telemetry): object {
  return Object.fromEntries(Object.entries(telemetry).filter(([, value]) => value !== null));
}
