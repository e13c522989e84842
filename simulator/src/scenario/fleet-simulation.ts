import type { DemoState } from '@ebbline/shared/contract/demo-faults';
import type { Result } from '@ebbline/shared/errors/result';
import { hallMessages, statusMessage, unitMessage, type SimulatedMessage } from '../payload/messages';
import { readCommand, type Command, type Commandable } from './command';
import { commandableOf } from './commandable';
import { demoFleet, halls, type FleetUnit } from './demo-fleet';
import { execute } from './execute';
import type { CommandFault } from './stage';
import { HallSimulation, hallPeriodS } from './hall-simulation';
import { Schedule, type ScheduledCommand } from './schedule';
import { PlantWorks } from './plant-works';
import { seededRandom } from './seeded-random';
import { SiteEvents } from './site-events';
import { tellActive } from './tell-active';
import { drawSitePhases, surroundingsAt, type SitePhases, type Surroundings } from './surroundings';
import type { SettledPlants } from './unit-plant';
import { UnitSimulation } from './unit-simulation';
import { Weather } from './weather';

export interface FleetSettings {
  readonly seed: number;
  /** Source time of the first second, ms since 1970. */
  readonly startMs: number;
  readonly units?: readonly FleetUnit[];
  /** From simulations of the same seed and start. */
  readonly settled?: SettledPlants;
  readonly schedule?: readonly ScheduledCommand[];
  /** A scheduled command that cannot be done now. */
  readonly onRefused?: (fault: CommandFault) => void;
}

/** The whole demo site. Time passes in slots: each second every unit has one, so that they do not all speak at once. */
export class FleetSimulation {
  readonly commandable: Commandable;
  private readonly units: readonly UnitSimulation[];
  private readonly halls: readonly HallSimulation[];
  private readonly phases: SitePhases;
  private readonly events = new SiteEvents();
  private readonly silent = new Set<string>();
  /** Messages that a command made, for the next slot. */
  private readonly waiting: SimulatedMessage[] = [];
  private readonly schedule: Schedule;
  private slot = 0;

  constructor(private readonly settings: FleetSettings) {
    const { seed, startMs } = settings;
    this.schedule = new Schedule(settings.schedule ?? []);
    const fleet = settings.units ?? demoFleet;
    this.phases = drawSitePhases(new Weather(seed), seededRandom(seed, 'halls'));
    const works = new PlantWorks(settings.settled ?? new Map<string, object>());
    const startS = startMs / 1000;
    this.units = fleet.map(
      (unit) =>
        new UnitSimulation(unit, seed, startS, this.around(unit.hall, startS), (...made) => works.make(...made)),
    );
    this.halls = halls.filter((id) => fleet.some(({ hall }) => hall === id)).map((id) => new HallSimulation(id, seed));
    this.commandable = commandableOf(fleet);
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
    for (const { command } of this.schedule.due(this.nowS)) {
      const given = this.command(JSON.stringify(command));
      if (!given.ok) this.settings.onRefused?.(given.fault);
    }
    const index = this.slot % this.units.length;
    const simulation = this.units[index] as UnitSimulation;
    this.slot += 1;
    simulation.advance(sourceMs / 1000, this.around(simulation.unit.hall, sourceMs / 1000));
    const readings = simulation.sense();
    const messages = this.waiting.splice(0);
    if (index === 0) messages.push(...this.speakHalls(sourceMs));
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

  /** Does what it is told; what cannot be done is told. */
  command(text: string): Result<Command, CommandFault> {
    const command = readCommand(text, this.commandable);
    if (!command.ok) return command;
    const done = execute(command.value, {
      units: this.units,
      events: this.events,
      nowS: this.nowS,
      say: (messages) => this.waiting.push(...messages(this.nextMs)),
    });
    return done.ok ? command : done;
  }

  /** Everything that is in a plant, a sensor or the sky now. */
  active(): DemoState['active'] {
    return tellActive(this.units, this.events, this.nowS);
  }

  private get nowS(): number {
    return (this.nextMs - this.settings.startMs) / 1000;
  }

  private around(hall: FleetUnit['hall'], epochS: number): Surroundings {
    const lowPa = this.events.lowPa(epochS - this.settings.startMs / 1000);
    return surroundingsAt(hall, this.phases, epochS, lowPa);
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
