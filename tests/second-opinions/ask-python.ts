import { execFile } from 'node:child_process';

/**
 * One run of Debian's python3, which has the libraries of Debian's packages. The script reads `given`, prepared from JSON, and
 * leaves its answer in `answer`: a whole batch in one process, as starting it is what takes long.
 */
export function askPython(python: string, script: string, given: unknown): Promise<Record<string, readonly number[]>> {
  const whole = `import json, sys\ngiven = json.load(sys.stdin)\n${script}\njson.dump(answer, sys.stdout)\n`;
  return new Promise((resolve, reject) => {
    const child = execFile(python, ['-c', whole], { maxBuffer: 64 * 1024 * 1024 }, (fault, stdout, stderr) => {
      if (fault === null) resolve(JSON.parse(stdout) as Record<string, readonly number[]>);
      else reject(new Error(`python3 gave no answer: ${stderr}`));
    });
    child.stdin?.end(JSON.stringify(given));
  });
}

/** So many values from one bound to the other, both among them. */
export const range = (from: number, to: number, count: number): readonly number[] =>
  Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));

/** The largest deviation of two lists, relative to the second. */
export const worstShare = (ours: readonly number[], theirs: readonly number[]): number =>
  worst(ours, theirs, (a, b) => Math.abs(a / b - 1));

export const worstDifference = (ours: readonly number[], theirs: readonly number[]): number =>
  worst(ours, theirs, (a, b) => Math.abs(a - b));

/** NaN where one of the values is none: no bound holds it. */
function worst(
  ours: readonly number[],
  theirs: readonly number[],
  deviation: (a: number, b: number) => number,
): number {
  if (ours.length === 0 || ours.length !== theirs.length) return Number.NaN;
  return ours.reduce((most, value, i) => Math.max(most, deviation(value, theirs[i] ?? Number.NaN)), 0);
}
