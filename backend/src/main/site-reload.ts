import type { SiteState } from '@ebbline/shared/contract/site-state';
import type { HealthFinding } from '@ebbline/shared/contract/health-reasons';
import { fail } from '@ebbline/shared/errors/result';
import type { LineFault } from '../connections/site-files/line-fault';
import type { SiteReading } from '../connections/site-files/read-site-file';
import type { CompiledSite } from '../evaluation/site/compiled-site';
import type { SiteInForce } from '../ports/site-in-force';

export interface LoadedSite {
  readonly site: CompiledSite;
  readonly contentHash: string;
  readonly warnings: readonly LineFault[];
}

export interface ReloadParts {
  /** As people know it. */
  readonly file: string;
  /** The file now, or that it is the one of this hash still. */
  readonly read: (knownHash: string) => Promise<SiteReading | 'unchanged'>;
  /** Puts another site in force everywhere. Throws where that can't be done now; it is tried again with the next reading. */
  readonly replace: (site: CompiledSite) => Promise<void>;
  readonly wallMs: () => number;
  readonly say: (line: string) => void;
}

type Told = SiteState['warnings'][number];

interface Refused {
  readonly sinceMs: number;
  readonly hash: string | null;
  readonly faults: readonly Told[];
  /** False where nothing in the file was in the way: then it is not the file that has to change. */
  readonly isForContent: boolean;
}

/** Takes a new content of the site file in whole, or refuses it whole and says why; the one before stays in force. */
export class SiteReload implements SiteInForce {
  private loadedMs: number;
  private refused: Refused | null = null;
  private running: Promise<void> | null = null;
  private next: Promise<void> | null = null;

  constructor(
    private inForce: LoadedSite,
    private readonly parts: ReloadParts,
  ) {
    this.loadedMs = parts.wallMs();
  }

  state(): SiteState {
    const { refused } = this;
    return {
      file: this.parts.file,
      loadedAt: new Date(this.loadedMs).toISOString(),
      contentHash: this.inForce.contentHash,
      refused:
        refused === null ? null : { since: new Date(refused.sinceMs).toISOString(), faults: [...refused.faults] },
      warnings: this.inForce.warnings.map(told),
    };
  }

  /** One at a time; all that is asked while one runs is answered by one more, which reads what stands there then. */
  async reload(): Promise<SiteState> {
    const again = (): Promise<void> => this.begin();
    if (this.running === null) await this.begin();
    else await (this.next ??= this.running.then(again, again));
    return this.state();
  }

  private begin(): Promise<void> {
    this.next = null;
    this.running = this.once().finally(() => {
      if (this.next === null) this.running = null;
    });
    return this.running;
  }

  /** For health. */
  reasons(): readonly HealthFinding[] {
    if (this.refused === null) return [];
    const { faults, isForContent } = this.refused;
    const [first] = faults;
    const where =
      first === undefined ? '' : `, first ${first.line === null ? '' : `line ${first.line}: `}${first.message}`;
    const message = `A newer content of the site file was refused (${faults.length} ${faults.length === 1 ? 'fault' : 'faults'}${where}); the one before is in force. ${isForContent ? 'Mend the file; it is read again by itself.' : 'Read it again, in Setup or by POST /api/site/reload, once that is settled.'}`;
    return [{ code: 'SITE_FILE_REFUSED', message }];
  }

  private async once(): Promise<void> {
    const reading = await this.parts.read(this.inForce.contentHash).catch(notRead);
    if (reading === 'unchanged') {
      this.refused = null;
      return;
    }
    const { contentHash, result } = reading;
    const faults = result.ok ? needsRestart(this.inForce.site, result.value.site) : result.fault.map(told);
    if (!result.ok || contentHash === null || faults.length > 0) {
      this.refuse(contentHash, faults);
      return;
    }
    try {
      await this.parts.replace(result.value.site);
    } catch (cause) {
      this.refuse(
        null,
        [{ line: null, key: '', message: `could not be put in force now: ${messageOf(cause)}` }],
        false,
      );
      return;
    }
    this.inForce = { ...result.value, contentHash };
    this.loadedMs = this.parts.wallMs();
    this.refused = null;
    this.parts.say(`Site file: the new content is in force (${result.value.site.units.length} units).`);
  }

  private refuse(hash: string | null, faults: readonly Told[], isForContent = true): void {
    const same = this.refused !== null && hash !== null && this.refused.hash === hash;
    this.refused = { sinceMs: this.refused?.sinceMs ?? this.parts.wallMs(), hash, faults, isForContent };
    if (same) return;
    this.parts.say(`Site file: a newer content was refused, the one before stays in force:`);
    for (const { line, key, message } of faults)
      this.parts.say(`  ${line === null ? '' : `line ${line}: `}${key === '' ? '' : `${key}: `}${message}`);
  }
}

const messageOf = (cause: unknown): string => (cause instanceof Error ? cause.message : String(cause));

/** A reading that failed is a refusal like another: watching goes on, and it is told where refusals are. */
const notRead = (cause: unknown): SiteReading => ({
  contentHash: null,
  result: fail([{ line: 1, key: '', message: `could not be read now: ${messageOf(cause)}` }]),
});

const told = ({ file, line, key, message }: LineFault): Told =>
  file === undefined ? { line, key, message } : { line: null, key, message: `${file}, line ${line}: ${message}` };

/** What a running program can't change: names that others know it by, and room that it took at its start. */
function needsRestart(before: CompiledSite, now: CompiledSite): readonly Told[] {
  const fault = (key: string, message: string): Told => ({
    line: null,
    key,
    message: `${message}; start Ebbline anew`,
  });
  return [
    ...(before.id === now.id ? [] : [fault('site.id', 'topics of the program itself bear the id')]),
    ...(before.demo === now.demo
      ? []
      : [fault('site.demo', 'whether the simulator may feed it is settled at the start')]),
    ...(now.maximumPayloadBytes <= before.maximumPayloadBytes
      ? []
      : [fault('intake.maximumPayloadBytes', 'room for longer payloads is taken at the start')]),
  ];
}
