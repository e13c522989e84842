import type { ValueProvider } from '@nestjs/common';
import { createEdge } from '../connections/config/edge';
import type { Environment } from '../connections/config/environment';
import { SessionEntrance } from '../connections/entrance/session-entrance';
import { CallerIdentity } from '../connections/http-api/caller-identity';
import { AUDIT } from '../ports/audit';
import { EDGE, type Edge } from '../ports/edge';
import { ENTRANCE } from '../ports/entrance';
import { IDENTITY } from '../ports/identity';
import { PEOPLE, type People } from '../ports/people';
import type { HealthFinding } from '@ebbline/shared/contract/health-reasons';
import type { ClosingStack } from './closing-stack';
import { openOpenId } from './open-open-id';
import { openPeople, type PeoplePlace } from './open-people';

export interface OpenEntrance {
  readonly edge: Edge;
  readonly people: People;
  readonly parts: readonly ValueProvider[];
  /** For health. */
  readonly reasons: () => readonly HealthFinding[];
}

/** Who is let in, and who acts. */
export function openEntrance(
  environment: Environment,
  place: Omit<PeoplePlace, 'dataFolder'>,
  closing: ClosingStack,
): OpenEntrance {
  const {
    httpHost: host,
    dataFolder,
    edge: { proxies, publicUrl },
  } = environment;
  const edge = createEdge({ host, proxies, publicUrl });
  const demo = place.demo && !edge.exposed;
  const { people, audit } = openPeople({ ...place, dataFolder, demo }, closing);
  const entrance = new SessionEntrance(people, edge, place.clock, demo);
  const parts: ValueProvider[] = [
    { provide: EDGE, useValue: edge },
    { provide: PEOPLE, useValue: people },
    { provide: AUDIT, useValue: audit },
    { provide: ENTRANCE, useValue: entrance },
    openOpenId(environment, place.clock),
    { provide: IDENTITY, useValue: new CallerIdentity(audit) },
  ];
  return { edge, people, parts, reasons: () => (people.trouble() === null ? [] : [peopleFailing]) };
}

/** What the disk said stands in the log, as it may name the machine's own paths. */
const peopleFailing: HealthFinding = {
  code: 'PEOPLE_FAILING',
  message: 'The disk refused the last change of people, sessions or tokens; the log says how.',
};

/** While there is no admin, whoever started the program may be the first one. */
export function sayFirstLink(people: Pick<People, 'firstLink'>, address: string, say: (line: string) => void): void {
  const link = people.firstLink();
  if (link !== null) say(`Set up the first admin (once): ${address}set-up#${link}`);
}
