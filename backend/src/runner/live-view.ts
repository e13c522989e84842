import type { PointList, Site } from '@ebbline/shared/contract/http-api';
import type { View, ViewRefusal } from '@ebbline/shared/contract/live-feed';
import { unreachable } from '@ebbline/shared/errors/unreachable';
import { limitLines } from '../evaluation/alarm-rules/limit-lines/limit-lines';
import type { CompiledHall, CompiledSite } from '../evaluation/site/compiled-site';
import type { FrameBody, LiveView, Watch } from '../ports/live-view';
import { HolderWatch } from './holder-watch';
import { findableAlarms } from './views/findable-alarms';
import { readingsOf } from './views/readings-of';
import type { Scene } from './views/scene';
import { setAsideList } from './views/to-set-aside';
import { timeText } from './views/time-text';
import { alarmsInOrder } from './views/to-alarm';
import { alertsOf } from './views/to-alert';
import { permitsOf } from './views/to-permit';
import { toExplanation } from './views/to-explanation';
import { toHallExplanation } from './views/to-hall-explanation';
import { toSetup } from './views/to-setup';
import { toAlarmsFrame } from './views/to-alarms-frame';
import { toTrendsFrame, type PointFound } from './views/to-trends-frame';
import { hallPaceMs } from './views/hall-pace';
import { toHallFrame } from './views/to-hall-frame';
import { toHallTrails } from './views/to-hall-trails';
import { toLoopFrame } from './views/to-loop-frame';
import { toSite } from './views/to-site';
import { toUnitList } from './views/to-unit-list';

/** Everything that can be seen of the running judge, in the words of the contract. */
export class RunnerLiveView implements LiveView {
  private known: CompiledSite | null = null;
  private unitPlaces: ReadonlyMap<string, number> = new Map();
  private hallsById: ReadonlyMap<string, CompiledHall> = new Map();

  constructor(
    private readonly scene: Scene,
    /** Counts up with every change of an alarm. */
    private readonly alarmVersion: () => number,
  ) {}

  private get unitOf(): ReadonlyMap<string, number> {
    this.follow();
    return this.unitPlaces;
  }

  private get hallOf(): ReadonlyMap<string, CompiledHall> {
    this.follow();
    return this.hallsById;
  }

  /** Another site may have come in force. */
  private follow(): void {
    const { site } = this.scene.pipeline;
    if (site === this.known) return;
    this.known = site;
    this.unitPlaces = new Map(site.units.map(({ id }, index) => [id, index]));
    this.hallsById = new Map(site.halls.map((hall) => [hall.id, hall]));
  }

  clock(): ReturnType<LiveView['clock']> {
    return this.scene.clock();
  }

  site(): Site {
    return toSite(this.scene.pipeline.site);
  }

  units(): ReturnType<LiveView['units']> {
    return toUnitList(this.scene);
  }

  points(id: string): PointList | null {
    const unit = this.unitOf.get(id);
    if (unit === undefined) return null;
    const { pipeline, nowMs } = this.scene;
    const { mode } = pipeline.modeOf(unit);
    return { unit: id, time: timeText(nowMs()), mode, points: readingsOf(pipeline, unit, nowMs()) };
  }

  alarms(): ReturnType<LiveView['alarms']> {
    return { time: timeText(this.scene.nowMs()) ?? new Date(0).toISOString(), alarms: alarmsInOrder(this.scene) };
  }

  setAside(): ReturnType<LiveView['setAside']> {
    return setAsideList(this.scene);
  }

  findAlarms(search: string): ReturnType<LiveView['findAlarms']> {
    return findableAlarms(this.scene, search);
  }

  alerts(): ReturnType<LiveView['alerts']> {
    return {
      time: timeText(this.scene.nowMs()) ?? new Date(0).toISOString(),
      alerts: alertsOf(this.scene, () => true),
    };
  }

  permits(): ReturnType<LiveView['permits']> {
    return {
      time: timeText(this.scene.nowMs()) ?? new Date(0).toISOString(),
      permits: permitsOf(this.scene, () => true),
    };
  }

  setup(id: string): ReturnType<LiveView['setup']> {
    const unit = this.unitOf.get(id);
    return unit === undefined ? null : toSetup(this.scene, unit);
  }

  limits(id: string): ReturnType<LiveView['limits']> {
    const unit = this.unitOf.get(id);
    const { site, state } = this.scene.pipeline;
    return unit === undefined ? null : { unit: id, limits: [...limitLines(site, state, unit)] };
  }

  hallTrails(id: string): ReturnType<LiveView['hallTrails']> {
    const hall = this.hallOf.get(id);
    return hall === undefined ? null : toHallTrails(this.scene, hall);
  }

  hasTopic(topic: string): boolean {
    return this.scene.pipeline.site.topics.has(topic);
  }

  refusalOf(view: View): ViewRefusal | null {
    if (view.screen === 'hall' && !this.hallOf.has(view.hall)) {
      return { code: 'VIEW_UNKNOWN_HALL', message: `This site has no hall ${view.hall}; choose one of the list.` };
    }
    if (view.screen === 'loop' && !this.unitOf.has(view.unit)) {
      return { code: 'VIEW_UNKNOWN_UNIT', message: `This site has no unit ${view.unit}; choose one of the list.` };
    }
    if (view.screen === 'trends') {
      const missing = view.points.find(({ unit, point }) => this.pointOf(unit, point) === null);
      if (missing !== undefined)
        return {
          code: 'VIEW_UNKNOWN_POINT',
          message: `This site has no point ${missing.point} of ${missing.unit}; choose one of the list.`,
        };
    }
    return null;
  }

  frame(view: View): FrameBody {
    switch (view.screen) {
      case 'hall':
        return toHallFrame(this.scene, this.hall(view.hall));
      case 'loop':
        return toLoopFrame(this.scene, this.unit(view.unit));
      case 'alarms':
        return toAlarmsFrame(this.scene);
      case 'trends':
        return toTrendsFrame(this.scene, view.points, (unit, point) => this.pointOf(unit, point));
      default:
        return unreachable(view);
    }
  }

  watch(view: View): Watch {
    let points: HolderWatch | null = null;
    let watched: CompiledSite | null = null;
    let alarms = -1;
    let broker = '';
    return {
      changed: () => {
        const version = this.alarmVersion();
        const link = JSON.stringify(this.scene.broker());
        const { site, state } = this.scene.pipeline;
        if (site !== watched)
          points = this.refusalOf(view) === null ? new HolderWatch(site, state, this.holdersOf(view)) : null;
        watched = site;
        const moved = points?.changed() ?? true;
        const news = version !== alarms || link !== broker;
        alarms = version;
        broker = link;
        return news ? 'news' : moved ? 'values' : 'nothing';
      },
      paceMs: () => (view.screen === 'hall' ? hallPaceMs(this.hallOf.get(view.hall)?.units.length ?? 0) : 0),
    };
  }

  findPoint(id: string, point: string): ReturnType<LiveView['findPoint']> {
    const unit = this.unitOf.get(id);
    if (unit === undefined) return 'unitUnknown';
    const found = this.pointOf(id, point);
    if (found === null) return 'pointUnknown';
    const { site } = this.scene.pipeline;
    const holder = site.holders[found.holder];
    return { holder: holder?.id ?? '', point, unitOfMeasure: site.slots.unitOfMeasure[found.slot] ?? '1' };
  }

  explanation(id: string, point: string): ReturnType<LiveView['explanation']> {
    const unit = this.unitOf.get(id);
    if (unit === undefined) return 'unitUnknown';
    const found = this.pointOf(id, point);
    if (found === null) return 'pointUnknown';
    return toExplanation(this.scene.pipeline, unit, found.slot, this.scene.nowMs());
  }

  hallExplanation(id: string, point: string): ReturnType<LiveView['hallExplanation']> {
    const hall = this.hallOf.get(id);
    if (hall === undefined) return 'hallUnknown';
    return toHallExplanation(this.scene, hall, point) ?? 'pointUnknown';
  }

  /** A point of a unit, or of the hall that it stands in. */
  private pointOf(unit: string, point: string): PointFound | null {
    if (!this.unitOf.has(unit)) return null;
    for (const holder of this.holdersOf({ screen: 'loop', unit })) {
      const slot = this.scene.pipeline.site.holders[holder]?.slotOf.get(point);
      if (slot !== undefined) return { holder, slot };
    }
    return null;
  }

  private holdersOf(view: View): readonly number[] {
    const { site } = this.scene.pipeline;
    if (view.screen === 'alarms') return [];
    if (view.screen === 'trends')
      return [...new Set(view.points.flatMap(({ unit, point }) => this.pointOf(unit, point)?.holder ?? []))];
    if (view.screen === 'hall') {
      const hall = this.hall(view.hall);
      return [hall.holder, ...hall.units.map((unit) => site.units[unit]?.holder ?? -1)];
    }
    const unit = site.units[this.unit(view.unit)];
    return unit === undefined ? [] : [unit.holder, site.halls[unit.hall]?.holder ?? -1];
  }

  private unit(id: string): number {
    const unit = this.unitOf.get(id);
    if (unit === undefined) throw new RangeError(`there is no unit ${id}; ask refusalOf first`);
    return unit;
  }

  private hall(id: string): CompiledHall {
    const hall = this.hallOf.get(id);
    if (hall === undefined) throw new RangeError(`there is no hall ${id}; ask refusalOf first`);
    return hall;
  }
}
