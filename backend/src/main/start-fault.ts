/** Why the program can't start: lines for the one who started it, each saying what to do. */
export class StartFault extends Error {
  constructor(readonly lines: readonly string[]) {
    super(lines.join('\n'));
    this.name = 'StartFault';
  }
}
