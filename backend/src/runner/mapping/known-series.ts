import type { KnownSeries } from '../../evaluation/mapping/heard-place';
import { inOrder, momentsKept } from '../../evaluation/mapping/heard-places';
import type { CompiledSite } from '../../evaluation/site/compiled-site';

/** Values by slot, as the pipeline has them; NaN: none. */
export type ValueOf = (slot: number) => number;

/** So many measured points at most are kept beside what is heard: 2,000 × 120 × 8 bytes. */
const mostKnown = 2000;

interface Known extends Omit<KnownSeries, 'series'> {
  readonly slot: number;
  readonly ring: Float64Array;
}

/** What the known points were at the moments at which is listened. Of a site with more points only the first are compared. */
export class KnownSeriesRing {
  private readonly all: readonly Known[];

  /** @param moments that have passed already: what is heard is beside the same ones after a new site file. */
  constructor(
    site: CompiledSite,
    public moments: number,
  ) {
    const known: Known[] = [];
    for (const { id, kind, slotOf } of site.holders)
      for (const [point, slot] of slotOf) {
        if (site.slots.measured[slot] !== 1 || known.length >= mostKnown) continue;
        known.push({ holder: id, kind, point, slot, ring: new Float64Array(momentsKept).fill(Number.NaN) });
      }
    this.all = known;
  }

  moment(valueOf: ValueOf): void {
    const at = this.moments % momentsKept;
    for (const { slot, ring } of this.all) ring[at] = valueOf(slot);
    this.moments += 1;
  }

  list(): readonly KnownSeries[] {
    return this.all.map(({ holder, kind, point, ring }) => ({
      holder,
      kind,
      point,
      series: inOrder(ring, this.moments),
    }));
  }
}
