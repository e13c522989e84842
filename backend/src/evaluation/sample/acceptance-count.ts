import type { CompiledSite } from '../site/compiled-site';
import type { Acceptance, Refusal, RefusalCode } from './acceptance';
import { refusalText } from './refusal-text';

/** The one `Acceptance` that is written again for each message. */
export class AcceptanceCount implements Acceptance {
  accepted = 0;
  late = 0;
  repeated = 0;
  newestSourceMs = Number.NaN;
  refusal: Refusal | null = null;
  refused = 0;

  constructor(private readonly site: CompiledSite) {}

  start(): void {
    this.accepted = 0;
    this.late = 0;
    this.repeated = 0;
    this.newestSourceMs = Number.NaN;
    this.refusal = null;
    this.refused = 0;
  }

  refuse(code: RefusalCode, topic: string, field: readonly string[] | null): void {
    this.refused += 1;
    this.refusal ??= { code, message: refusalText(code, this.site, topic, field) };
  }

  accept(sourceMs: number): void {
    this.accepted += 1;
    if (!(sourceMs <= this.newestSourceMs) && !Number.isNaN(sourceMs)) this.newestSourceMs = sourceMs;
  }
}
