import { pointDefinition } from '@ebbline/shared/contract/point-table';
import type { Setup, SetupPoint } from '@ebbline/shared/contract/setup';
import type { CompiledSite } from '../../evaluation/site/compiled-site';
import { reasonBit } from '../../evaluation/slots/quality-reasons';
import { notWatched } from './not-watched';
import type { Scene } from './scene';
import { timeText } from './time-text';
import { unitAt } from './to-loop-line';
import { toReading } from './to-reading';

/** Every measured point of a unit and of its hall: from where it is to come, and whether it does; and what is not watched for want of one. */
export function toSetup(scene: Scene, unit: number): Setup {
  const { site } = scene.pipeline;
  const { id, holder, hall } = unitAt(scene.pipeline, unit);
  const bindings = bindingsOf(site);
  const points = [holder, site.halls[hall]?.holder ?? -1].flatMap((index) => {
    const own = site.holders[index];
    if (own === undefined) return [];
    return [...own.slotOf.values()]
      .filter((slot) => site.slots.measured[slot] === 1)
      .map((slot) => toSetupPoint(scene, slot, bindings.get(slot)));
  });
  return { unit: id, time: timeText(scene.nowMs()), points, notWatched: notWatched(site, unit) };
}

function toSetupPoint({ pipeline, nowMs }: Scene, slot: number, bound: Bound | undefined): SetupPoint {
  const { site, state } = pipeline;
  const id = site.slots.pointId[slot] ?? '';
  const reasons = state.reasons[slot] ?? 0;
  return {
    reading: toReading(pipeline, slot, nowMs()),
    title: pointDefinition(id)?.title ?? id,
    topic: bound?.topic ?? '',
    path: [...(bound?.path ?? [])],
    period: (site.slots.periodMs[slot] ?? Number.NaN) / 1000,
    arriving:
      (reasons & reasonBit.notReceived) !== 0 ? 'never' : (reasons & reasonBit.stale) !== 0 ? 'silent' : 'arriving',
  };
}

interface Bound {
  readonly topic: string;
  readonly path: readonly string[];
}

const boundOfSite = new WeakMap<CompiledSite, ReadonlyMap<number, Bound>>();

/** Slot → topic and path; made once a site, when first asked. */
function bindingsOf(site: CompiledSite): ReadonlyMap<number, Bound> {
  const known = boundOfSite.get(site);
  if (known !== undefined) return known;
  const bound = new Map<number, Bound>();
  for (const [topic, plan] of site.topics) for (const { slot, path } of plan.bindings) bound.set(slot, { topic, path });
  boundOfSite.set(site, bound);
  return bound;
}
