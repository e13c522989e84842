import { DemoPlantsLink } from '../connections/mqtt-intake/demo-plants-link';
import type { DemoPlants } from '../ports/demo-plants';
import { noDemoPlants } from '../ports/no-demo-plants';
import type { BrokerInUse } from './open-broker';
import type { ClosingStack } from './closing-stack';

/** A line to the simulator where the site file says that this is a demo site; a real site has none. */
export function openDemoPlants(
  demo: boolean,
  { url, tlsFiles }: Pick<BrokerInUse, 'url' | 'tlsFiles'>,
  clientId: string,
  closing: ClosingStack,
): DemoPlants {
  if (!demo) return noDemoPlants;
  const link = new DemoPlantsLink(url, clientId, tlsFiles);
  closing.add(() => link.stop());
  return link;
}
