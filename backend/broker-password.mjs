/** `npm run broker:password`: asks for a password, and prints its hash for the access file of the embedded broker. */
import { nodeVersionFault } from './build/node-version.mjs';

const fault = nodeVersionFault(process.versions.node);
if (fault === null) {
  const { loadModule } = await import('./build/load-module.mjs');
  const { brokerPasswordCommand } = await loadModule('backend/src/connections/people/broker-password-command.ts');
  process.exitCode = await brokerPasswordCommand(process.stdin, console.log, console.error);
} else {
  console.error(fault);
  process.exitCode = 2;
}
