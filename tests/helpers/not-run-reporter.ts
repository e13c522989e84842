import type { Reporter, TestModule } from 'vitest/node';
import { needsMark, type Requirement, requirementNames, type Requirements } from './probe-requirements';

/** Says before the summary what was not run here, how many tests, and what would bring it. Listed before 'default'. */
export class NotRunReporter implements Reporter {
  constructor(
    private readonly requirements: Requirements,
    private readonly print: (line: string) => void = (line) => process.stdout.write(`${line}\n`),
  ) {}

  onTestRunEnd(modules: ReadonlyArray<TestModule>): void {
    const skipped = modules.flatMap((module) => [...module.children.allTests('skipped')].map((test) => test.fullName));
    for (const line of notRunLines(skipped, this.requirements)) this.print(line);
  }
}

/** One line an absent requirement, and one for tests skipped by anything else. */
export function notRunLines(skippedTitles: readonly string[], requirements: Requirements): string[] {
  const needing = (name: Requirement): number =>
    skippedTitles.filter((title) => /\[needs ([^\]]*)\]/.exec(title)?.[1]?.split(', ').includes(name)).length;
  const lines = requirementNames
    .map((name) => ({ name, count: needing(name), bring: requirements[name].bring }))
    .filter(({ count }) => count > 0)
    .map(({ name, count, bring }) => `  not run here: ${count} test(s) that need ${name}; to bring it: ${bring}`);
  const other = skippedTitles.filter((title) => !title.includes(needsMark([]).slice(0, 7))).length;
  return other > 0 ? [...lines, `  skipped without a requirement: ${other} test(s), which is a defect`] : lines;
}
