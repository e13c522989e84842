import { fail, type Result } from '@ebbline/shared/errors/result';
import { lineText, type LineFault } from '../connections/site-files/line-fault';
import type { CompiledSite } from '../evaluation/site/compiled-site';
import type { AuthorisedList, AuthorisedListInForce } from '../ports/authorised-list';

export interface AuthorisedListParts {
  readonly read: (site: CompiledSite) => Promise<Result<AuthorisedList, readonly LineFault[]>>;
  readonly say: (line: string) => void;
}

/** Takes a new content of the authorised list in whole, or refuses it whole and says why; the one before stays in force. */
export class AuthorisedListReload implements AuthorisedListInForce {
  private faults: readonly string[] = [];
  private reading: Promise<void> = Promise.resolve();

  constructor(
    private inForce: AuthorisedList,
    private site: CompiledSite,
    private readonly parts: AuthorisedListParts,
  ) {}

  list(): AuthorisedList {
    return this.inForce;
  }

  refused(): readonly string[] {
    return this.faults;
  }

  /** Another site file is in force: the list has to fit its halls and units. */
  follow(site: CompiledSite): Promise<void> {
    this.site = site;
    return this.reload();
  }

  /** One after the other, so that what stands in the file last is in force last. */
  reload(): Promise<void> {
    const once = (): Promise<void> => this.once();
    return (this.reading = this.reading.then(once, once));
  }

  private async once(): Promise<void> {
    const read = await this.parts.read(this.site).catch(notRead);
    const { file, version } = this.inForce;
    if (read.ok) {
      const isNews = this.faults.length > 0 || read.value.version !== version;
      this.inForce = read.value;
      this.faults = [];
      if (isNews) this.parts.say(listLine(read.value));
      return;
    }
    const faults = read.fault.map((fault) => lineText(file, fault));
    const isNews = faults.join('\n') !== this.faults.join('\n');
    this.faults = faults;
    if (!isNews) return;
    this.parts.say(`Alarm list: a newer content was refused, version ${version} stays in force:`);
    for (const fault of faults) this.parts.say(`  ${fault}`);
  }
}

/** A reading that failed is a refusal like another: watching goes on, and it is told where refusals are. */
const notRead = (cause: unknown): Result<never, readonly LineFault[]> => {
  const why = cause instanceof Error ? cause.message : String(cause);
  return fail([{ line: 1, key: '', message: `could not be read now: ${why}` }]);
};

/** Which list is in force, for the one who started the program. */
export const listLine = ({ file, version, approvedBy, approvedOn }: AuthorisedList): string =>
  `Alarm list: ${file}, version ${version}, approved by ${approvedBy} on ${approvedOn}`;
