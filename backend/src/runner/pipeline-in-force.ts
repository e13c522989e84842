import type { CountingPipeline } from '../evaluation/pipeline/create-pipeline';
import type { CompiledSite } from '../evaluation/site/compiled-site';

export interface PipelineInForce {
  /** Always the one in force, whoever holds it: every use of it reaches the newest. */
  readonly pipeline: CountingPipeline;
  /** Another site takes the place of the one in force, between two slices. */
  replace(site: CompiledSite, nowMs: number): void;
  /** The same site with other limits, between two slices. */
  relimit(site: CompiledSite): void;
}

/** Lets everything that holds a pipeline go on with the one of another site, without being told. */
export function pipelineInForce(first: CountingPipeline): PipelineInForce {
  let current = first;
  // A pipeline's functions know their own state and take no `this`: so each look-up may go to another one.
  const pipeline = new Proxy(first, { get: (_, key) => Reflect.get(current, key) as unknown });
  return {
    pipeline,
    replace(site, nowMs) {
      current = current.goOn(site, nowMs);
    },
    relimit(site) {
      current = current.relimit(site);
    },
  };
}
