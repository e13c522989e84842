import { fail, type Failure, type Result } from '@ebbline/shared/errors/result';
import type { ActiveFault } from '../faults/active-faults';
import { strengthOf } from '../faults/active-faults';
import { branchId } from '../plant/plant-readings';
import { hallMessages, statusMessage, unitMessage, type SimulatedMessage } from '../payload/messages';
import { readCommand, type Command, type CommandRefusal } from './command';
import { demoFleet, halls, type FleetUnit } from './demo-fleet';
import { faultTable } from '../faults/fault-table';
import { HallSimulation, hallPeriodS } from './hall-simulation';
import { seededRandom } from './seeded-random';
import { drawSitePhases, surroundingsAt, type SitePhases, type Surroundings } from './surroundings';
import { UnitSimulation, type SettledPlants } from './unit-simulation';
import { Weather } from './weather';

export interface FleetSettings {
  readonly seed: number;
  /** Source time of the first second, ms since 1970. */
  readonly startMs: number;
  readonly units?: readonly FleetUnit[];
  /** From simulations of the same seed and start. */
  readonly settled?: SettledPlants;
}

export type CommandFault = CommandRefusal | Failure<'FAULT_NOT_ACTIVE' | 'FAULT_ALREADY_ACTIVE'>;

/** The whole demo site. Time passes in slots: each second every unit has one, so that they do not all speak at once. */
export class FleetSimulation {
  private readonly units: readonly UnitSimulation[];
  private readonly halls: readonly HallSimulation[];
  private readonly phases: SitePhases;
  private readonly silent = new Set<string>();
  private slot = 0;

  constructor(private readonly settings: FleetSettings) {
    const fleet = settings.units ?? demoFleet;
    this.phases = drawSitePhases(new Weather(settings.seed), seededRandom(settings.seed, 'halls'));
    const startS = settings.startMs / 1000;
    this.units = fleet.map(
      (unit) => new UnitSimulation(unit, settings.seed, startS, this.around(unit.hall, startS), settings.settled),
    );
    this.halls = halls
      .filter((id) => fleet.some(({ hall }) => hall === id))
      .map((id) => new HallSimulation(id, settings.seed));
  }

  get gateways(): readonly string[] {
    return [...new Set(this.units.map(({ unit }) => unit.gateway))];
  }

  /** Source time of the next slot. */
  get nextMs(): number {
    return this.settings.startMs + Math.floor((this.slot * 1000) / this.units.length);
  }

  /** What every gateway says first. */
  firstMessages(): SimulatedMessage[] {
    return this.gateways.map((gateway) => statusMessage(gateway, true, this.settings.startMs));
  }

  /** One slot: a unit runs for a second and speaks, unless its line is lost. */
  next(): SimulatedMessage[] {
    const sourceMs = this.nextMs;
    const index = this.slot % this.units.length;
    const simulation = this.units[index] as UnitSimulation;
    this.slot += 1;
    simulation.advance(sourceMs / 1000, this.around(simulation.unit.hall, sourceMs / 1000));
    const readings = simulation.sense();
    const messages = index === 0 ? this.speakHalls(sourceMs) : [];
    messages.push(...this.speakOfLine(simulation.unit.gateway, sourceMs));
    if (!this.silent.has(simulation.unit.gateway)) {
      messages.push(unitMessage(simulation.unit, readings, simulation.inputs.ambientPa, sourceMs));
    }
    return messages;
  }

  /** Leaves out so many seconds: the plants stand still meanwhile. For when the machine slept. */
  skipSeconds(seconds: number): void {
    this.slot += seconds * this.units.length;
  }

  /** Starts or repairs a fault; what cannot be done is told. */
  command(text: string): Result<Command, CommandFault> {
    const command = readCommand(
      text,
      this.units.map(({ unit }) => unit),
    );
    if (!command.ok) return command;
    const { unit, order, action } = command.value;
    const simulation = this.units.find((candidate) => candidate.unit === unit) as UnitSimulation;
    const same = simulation.faults.find((active) => isSame(active, command.value) && active.repairedS === null);
    const what = `${faultTable[order.fault].title} at ${unit.id}`;
    if (action === 'repair') {
      if (!same) return fail({ code: 'FAULT_NOT_ACTIVE', message: `${what} is not active: nothing to repair` });
      same.repairedS = simulation.nowS;
    } else {
      if (same) return fail({ code: 'FAULT_ALREADY_ACTIVE', message: `${what} is active already: repair it first` });
      simulation.faults.push({ order, sinceS: simulation.nowS, repairedS: null });
    }
    return command;
  }

  /** Every fault that is in a plant now, for the answer to a command. */
  activeFaults(): Readonly<Record<string, unknown>>[] {
    return this.units.flatMap((simulation) =>
      simulation.faults.map((active) => ({
        unit: simulation.unit.id,
        ...active.order,
        rack: undefined,
        branch: faultTable[active.order.fault].inRack ? branchId(active.order.rack) : undefined,
        forS: simulation.nowS - active.sinceS,
        repaired: active.repairedS !== null,
        strength: Number(strengthOf(active, simulation.nowS).toFixed(3)),
      })),
    );
  }

  private around(hall: FleetUnit['hall'], epochS: number): Surroundings {
    return surroundingsAt(hall, this.phases, epochS);
  }

  private speakHalls(sourceMs: number): SimulatedMessage[] {
    const second = Math.floor(this.slot / this.units.length);
    if (second % hallPeriodS !== 0) return [];
    return this.halls.flatMap((hall) =>
      hallMessages(hall.id, hall.sense(this.around(hall.id, sourceMs / 1000), second), sourceMs),
    );
  }

  /** The last will when a gateway falls silent, its greeting when it is back. */
  private speakOfLine(gateway: string, sourceMs: number): SimulatedMessage[] {
    const lost = this.units.some((simulation) => simulation.unit.gateway === gateway && simulation.lineLost);
    if (lost === this.silent.has(gateway)) return [];
    if (lost) this.silent.add(gateway);
    else this.silent.delete(gateway);
    return [statusMessage(gateway, !lost, sourceMs)];
  }
}

const isSame = (active: ActiveFault, { order }: Command): boolean =>
  active.order.fault === order.fault && active.order.rack === order.rack;
