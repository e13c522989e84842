import { modes } from '@ebbline/shared/contract/http-api';
import type { LineUp } from '@ebbline/shared/contract/report';

/** The last good value of each point of a unit within the last minute, SI; NaN: none. A point that it does not have is absent. */
export type LastValues = ReadonlyMap<string, number>;

interface Rule {
  /** What is looked at, for where it is not known. */
  readonly title: string;
  readonly points: readonly string[];
  /** What stands other than usual, in words; null: as usual. Values as `points`. */
  readonly say: (values: readonly number[]) => string | null;
}

/** A valve that stands further from what it is told than this share of its stroke, as VALVE-1 has it unless set otherwise. */
const apart = 0.05;
const yes = (value: number | undefined): boolean => (value ?? 0) >= 0.5;
const percent = (value: number): string => `${(100 * value).toFixed(0)} %`;
const modeWords: Readonly<Partial<Record<(typeof modes)[number], string>>> = {
  tightnessTest: 'tightness test',
  standby: 'standby under vacuum',
  powerReturn: 'power return',
  service: 'service on a branch',
};

const one = (title: string, point: string, say: (value: number) => string | null): Rule => ({
  title,
  points: [point],
  say: ([value = Number.NaN]) => say(value),
});
const told = (title: string, command: string, position: string): Rule => ({
  title,
  points: [command, position],
  say: ([is = 0, at = 0]) =>
    Math.abs(at - is) > apart ? `${title} told ${percent(is)}, stands at ${percent(at)}` : null,
});
const runs = (title: string, command: string, running: string): Rule => ({
  title: `${title}, command against running`,
  points: [command, running],
  say: ([is, does]) =>
    yes(is) === yes(does) ? null : yes(is) ? `${title} told to run, and stands` : `${title} runs without being told to`,
});

const rules: readonly Rule[] = [
  one('mode', 'mode', (value) => {
    const mode = modes[Math.round(value)];
    if (mode === 'running') return null;
    return mode === undefined ? 'mode: a number that means none' : `mode: ${modeWords[mode] ?? mode}`;
  }),
  one('hand, bypass or local', 'control.manual', (value) => (yes(value) ? 'in hand, bypassed or local' : null)),
  one('pump running', 'pump.running', (value) => (yes(value) ? null : 'pump stands')),
  runs('pump', 'pump.command', 'pump.running'),
  one('standby pump available', 'pump.available', (value) => (yes(value) ? null : 'no standby pump available')),
  one('standby pump running', 'pump.standby.running', (value) => (yes(value) ? 'standby pump runs' : null)),
  runs('vacuum source', 'vacuum.command', 'vacuum.running'),
  one('standby vacuum source available', 'vacuum.available', (value) =>
    yes(value) ? null : 'no standby vacuum source available: one is alone',
  ),
  {
    title: 'which vacuum source runs',
    points: ['vacuum.running', 'vacuum.standby.running'],
    say: ([first, standby]) =>
      yes(standby) ? (yes(first) ? 'both vacuum sources run' : 'standby vacuum source runs alone') : null,
  },
  one('vacuum trap', 'vacuum.trap.full', (value) => (yes(value) ? 'vacuum trap full' : null)),
  one('separator high-level switch', 'separator.levelHigh', (value) =>
    yes(value) ? 'separator high-level switch on' : null,
  ),
  told('facility valve', 'valve.command', 'valve.position'),
  told('bleed or vent of the supply tank', 'supplyTank.vent.command', 'supplyTank.vent.position'),
];

/** What a unit stood lined up as. Unknown is said, and never counted as usual. @param branches ids */
export function lineUpOf(unit: string, branches: readonly string[], values: LastValues): LineUp {
  const all = [...rules, ...branches.map(isolated)];
  const silent = branches.filter((branch) => !values.has(`branch.${branch}.isolated`));
  const [offNormal, unknown, notMeasured]: [string[], string[], string[]] = [[], [], []];
  let asUsual = 0;
  for (const { title, points, say } of all) {
    if (!points.every((point) => values.has(point))) {
      if (!points.some((point) => isolation.test(point))) notMeasured.push(title);
    } else {
      const known = points.map((point) => values.get(point) ?? Number.NaN);
      const text = known.some(Number.isNaN) ? null : say(known);
      if (known.some(Number.isNaN)) unknown.push(title);
      else if (text === null) asUsual += 1;
      else offNormal.push(text);
    }
  }
  // Branches come by the dozen: one line says it of all.
  if (silent.length > 0) notMeasured.push(`which of these branches are valved off: ${silent.join(', ')}`);
  return { unit, offNormal, unknown, notMeasured, asUsual };
}

const isolation = /^branch\..*\.isolated$/;

const isolated = (branch: string): Rule =>
  one(`branch ${branch} valved off or not`, `branch.${branch}.isolated`, (value) =>
    yes(value) ? `branch ${branch} valved off: not protected` : null,
  );

/** Every point that is looked at. */
export const lineUpPoints = (branches: readonly string[]): readonly string[] => [
  ...new Set([...rules.flatMap(({ points }) => points), ...branches.map((branch) => `branch.${branch}.isolated`)]),
];
