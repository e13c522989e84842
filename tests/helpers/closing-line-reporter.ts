import type { Reporter, TestModule } from 'vitest/node';

/** Ends the run with one plain line of totals. Listed after 'default'. */
export class ClosingLineReporter implements Reporter {
  constructor(private readonly print: (line: string) => void = (line) => process.stdout.write(`${line}\n`)) {}

  onTestRunEnd(modules: ReadonlyArray<TestModule>, errors: ReadonlyArray<unknown>): void {
    const count = (state: 'passed' | 'failed' | 'skipped'): number =>
      modules.reduce((sum, module) => sum + [...module.children.allTests(state)].length, 0);
    // A file or a group that fails outside its tests, or an unhandled error, counts as one failure.
    const holders = modules.flatMap((module) => [module, ...module.children.allSuites()]);
    const broken = holders.filter((holder) => holder.errors().length > 0).length + errors.length;
    this.print(`${count('passed')} passed, ${count('failed') + broken} failed, ${count('skipped')} skipped`);
  }
}
