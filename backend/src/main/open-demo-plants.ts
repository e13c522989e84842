import { DemoPlantsLink } from '../connections/mqtt-intake/demo-plants-link';
import type { DemoPlants } from '../ports/demo-plants';
import { noDemoPlants } from '../ports/no-demo-plants';
import type { ClosingStack } from './closing-stack';

/** A line to the simulator where the site file says that this is a demo site; a real site has none. */
export function openDemoPlants(demo: boolean, mqttUrl: string, clientId: string, closing: ClosingStack): DemoPlants {
  if (!demo) return noDemoPlants;
  const link = new DemoPlantsLink(mqttUrl, clientId);
  closing.add(() => link.stop());
  return link;
}
