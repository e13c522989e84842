import { DemoPlantsLink } from '../connections/mqtt-intake/demo-plants-link';
import type { DemoPlants } from '../ports/demo-plants';
import { noDemoPlants } from '../ports/no-demo-plants';
import type { BrokerInUse } from './open-broker';
import type { ClosingStack } from './closing-stack';

/** A line to the simulator where the site file says that this is a demo site; a real site has none. */
export function openDemoPlants(
  demo: boolean,
  { ownUrl, tlsFiles }: Pick<BrokerInUse, 'ownUrl' | 'tlsFiles'>,
  clientId: string,
  closing: ClosingStack,
): DemoPlants {
  if (!demo) return noDemoPlants;
  const link = new DemoPlantsLink(ownUrl, clientId, tlsFiles);
  closing.add(() => link.stop());
  return link;
}
