import type { SimulatedMessage } from '../../simulator/src/payload/messages';

type Tree = Readonly<Record<string, unknown>>;

/** Telemetry of every so manieth second; what the building and the gateways' lines say is kept whole. */
export function* everySoMany(
  messages: Iterable<SimulatedMessage>,
  seconds: number,
  startMs: number,
): Generator<SimulatedMessage> {
  for (const message of messages) {
    const second = Math.floor((message.sourceMs - startMs) / 1000);
    if (second % seconds === 0 || message.gateway === null || message.retain) yield message;
  }
}

/** The site file of gateways that speak so seldom: the period of every point of a unit that states none. */
export function withPeriod(site: Record<string, unknown>, seconds: number): Record<string, unknown> {
  const slower = (holders: unknown): Tree =>
    mapped(holders, (holder) => ({
      ...holder,
      ...(holder['points'] === undefined
        ? {}
        : { points: mapped(holder['points'], (point) => ({ period: `${seconds} s`, ...point })) }),
    }));
  return { ...site, templates: slower(site['templates']), units: slower(site['units']) };
}

/** The same of the halls, whose air speaks of its own accord: in a time lapse it speaks as seldom. */
export function withPeriodOfHalls(site: Record<string, unknown>, seconds: number): Record<string, unknown> {
  const slower = (hall: Tree): Tree => ({
    ...hall,
    points: mapped(hall['points'], (point) => ({ ...point, period: `${seconds} s` })),
  });
  return { ...site, halls: mapped(site['halls'], slower) };
}

const mapped = (tree: unknown, change: (branch: Tree) => Tree): Tree =>
  Object.fromEntries(
    Object.entries((tree ?? {}) as Tree).map(([id, branch]) => [id, branch === null ? null : change(branch as Tree)]),
  );
