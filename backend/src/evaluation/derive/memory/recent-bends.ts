/** A minute of them: what a glitch leaves behind is gone as soon as the glitch has left the windows. */
const kept = 60;
/** So many of them a glitch may make: a level that is lost and comes back makes four, two single wrong samples six. Own rule. */
const ofGlitches = 6;
/** Beyond three times the largest that is not a glitch's, 4.9 standard deviations of normal noise: own rule. */
const wildSquare = 9;

/**
 * Mean square of the last minute's second differences ("bends") of many signals, without those of a glitch: the seventh largest
 * tells what is usual, and what lies far beyond it is left out. A rise of the noise itself makes more than six large ones, and is
 * followed. Where the seventh is nothing, as of a level in coarse steps, there is no measure of the usual, and all count.
 */
export class RecentBends {
  private readonly squares: Float64Array;
  private readonly heads: Uint8Array;
  private readonly counts: Uint8Array;
  /** What `variance` found; NaN since the last `push`. */
  private readonly found: Float64Array;
  /** To reckon in; no memory of a signal, so hidden from what copies memories. */
  readonly #largest = new Float64Array(ofGlitches + 1);

  constructor(signals: number) {
    this.squares = new Float64Array(signals * kept);
    this.heads = new Uint8Array(signals);
    this.counts = new Uint8Array(signals);
    this.found = new Float64Array(signals).fill(Number.NaN);
  }

  push(signal: number, bend: number): void {
    const head = this.heads[signal] as number;
    this.squares[signal * kept + head] = bend * bend;
    this.heads[signal] = head + 1 === kept ? 0 : head + 1;
    if ((this.counts[signal] as number) < kept) this.counts[signal] = (this.counts[signal] as number) + 1;
    this.found[signal] = Number.NaN;
  }

  /** How many there are, up to a minute's. */
  count(signal: number): number {
    return this.counts[signal] as number;
  }

  /** Mean square in the signal's unit squared; NaN before the first. */
  variance(signal: number): number {
    const known = this.found[signal] as number;
    if (!Number.isNaN(known)) return known;
    const first = signal * kept;
    const end = first + (this.counts[signal] as number);
    const usual = this.usual(first, end);
    const most = usual > 0 ? wildSquare * usual : Infinity;
    let sum = 0;
    let counted = 0;
    for (let i = first; i < end; i += 1) {
      const square = this.squares[i] as number;
      if (square > most) continue;
      sum += square;
      counted += 1;
    }
    return (this.found[signal] = sum / counted);
  }

  /** The seventh largest; 0 where there are fewer. */
  private usual(first: number, end: number): number {
    const largest = this.#largest;
    largest.fill(0);
    for (let i = first; i < end; i += 1) {
      const square = this.squares[i] as number;
      if (!(square > (largest[ofGlitches] as number))) continue;
      let place = ofGlitches;
      for (; place > 0 && (largest[place - 1] as number) < square; place -= 1)
        largest[place] = largest[place - 1] as number;
      largest[place] = square;
    }
    return largest[ofGlitches] as number;
  }
}
