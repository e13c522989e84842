import type { HolderPlan } from './compile-slots';
import type { Holder, PointBinding, TopicPlan } from './compiled-site';
import { keyPath, type FaultList, type FaultPath } from './site-fault';

export interface StatusSource {
  readonly topic: string;
  readonly gateway: number;
  readonly online: string;
  readonly path: readonly string[] | null;
  readonly at: FaultPath;
}

interface Draft {
  readonly plan: TopicPlan & { readonly bindings: PointBinding[] };
  readonly firstAt: () => FaultPath;
  readonly takenPaths: Map<string, () => FaultPath>;
}

const joined = (path: readonly string[] | null): string =>
  path === null ? '' : path.length === 1 ? (path[0] ?? '') : path.join('\u0000');

const same = (a: readonly string[] | null, b: readonly string[] | null): boolean => a === b || joined(a) === joined(b);

/** Topic → what its payload carries. Two points in one place, or two readings of one topic, are faults. */
export function compileTopics(
  plans: readonly HolderPlan[],
  holders: readonly Holder[],
  statuses: readonly StatusSource[],
  faults: FaultList,
): ReadonlyMap<string, TopicPlan> {
  const drafts = new Map<string, Draft>();
  // Equal quality paths become one and the same list, so that intake looks each up once a message.
  const oneOf = new Map<string, readonly string[]>();
  const shared = (path: readonly string[] | null): readonly string[] | null => {
    if (path === null) return null;
    const known = oneOf.get(joined(path));
    if (known !== undefined) return known;
    oneOf.set(joined(path), path);
    return path;
  };
  plans.forEach((plan, h) => {
    for (const { point, source, at } of plan.measured) {
      const slot = holders[h]?.slotOf.get(point.id);
      if (source === null || slot === undefined) continue;
      const format = source.path.length === 0 ? 'number' : 'json';
      const timePath = source.time?.path ?? null;
      const timeForm = source.time?.form ?? null;
      let draft = drafts.get(source.topic);
      if (draft === undefined) {
        const { topic } = source;
        const plan: Draft['plan'] = { topic, format, status: null, timePath, timeForm, bindings: [] };
        draft = { plan, firstAt: at, takenPaths: new Map() };
        drafts.set(source.topic, draft);
      }
      const taken = joined(source.path);
      const other = draft.takenPaths.get(taken);
      if (other !== undefined) {
        faults.add(
          at(),
          `"${source.topic}" gives ${place(source.path)} to ${keyPath(other())} already (is {unit} missing in the topic?); two points never share a place`,
        );
        continue;
      }
      draft.takenPaths.set(taken, at);
      if (draft.plan.format !== format) {
        faults.add(
          at(),
          `"${source.topic}" is JSON for one point and a bare number for another (${keyPath(draft.firstAt())}); give a path to both or to none`,
        );
      } else if (!same(draft.plan.timePath, timePath) || draft.plan.timeForm !== timeForm) {
        faults.add(
          at(),
          `"${source.topic}" has another time than for ${keyPath(draft.firstAt())}; one message has one time`,
        );
      }
      draft.plan.bindings.push({
        slot,
        path: source.path,
        qualityPath: shared(source.qualityPath),
        qualityGood: source.qualityGood,
        words: point.words,
      });
    }
  });
  for (const { topic, gateway, online, path, at } of statuses) {
    const other = drafts.get(topic);
    if (other !== undefined) {
      faults.add(at, `"${topic}" is taken by ${keyPath(other.firstAt())}; a status has a topic of its own`);
      continue;
    }
    const status = { gateway, online, path };
    drafts.set(topic, {
      plan: { topic, format: 'status', status, timePath: null, timeForm: null, bindings: [] },
      firstAt: () => at,
      takenPaths: new Map(),
    });
  }
  return new Map([...drafts].map(([topic, draft]) => [topic, draft.plan]));
}

const place = (path: readonly string[]): string => (path.length === 0 ? 'its number' : `"${path.join('.')}"`);
