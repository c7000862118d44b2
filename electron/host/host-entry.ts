/** The program in a browser: starts the engine and the loopback host, prints the address, stays until it is told to end. */
import { join } from 'node:path';
import { parseArgs } from 'node:util';

import { hostTexts } from '#shared-types/texts/host.ts';

import { createEngineLink } from '../processes/engine-link.ts';
import { createEventHub } from '../processes/event-hub.ts';
import { createForkBroker } from '../processes/fork-broker.ts';
import { libraryFolders } from '../processes/library-folder.ts';
import { openLoopbackHost, type LoopbackHost } from './loopback-host.ts';

const { library, port } = readOptions();
const folders = libraryFolders(library);
const hub = createEventHub();
const link = createEngineLink({
  broker: createForkBroker(),
  folders,
  carrier: 'loopback',
  library: 'own',
  publish: hub.publish,
});

const started = await link.started;
if (!started.ok) {
  console.error(started.error.message);
  process.exit(1);
}
const host = await openHost();
console.log(hostTexts.open(host.address));
console.log(hostTexts.stopHint);

function readOptions(): { library: string | null; port: number } {
  try {
    const { values } = parseArgs({
      options: { library: { type: 'string' }, port: { type: 'string', default: '0' } },
    });
    const asked = Number(values.port);
    if (!/^\d+$/.test(values.port) || asked > 65_535) throw new Error(hostTexts.noPort(values.port));
    return { library: values.library ?? null, port: asked };
  } catch (error) {
    console.error(`${error instanceof Error ? error.message : String(error)}\n${hostTexts.usage}`);
    process.exit(2);
  }
}

async function openHost(): Promise<LoopbackHost> {
  try {
    return await openLoopbackHost({ link, hub, uploadFolder: join(folders.own, 'uploads'), port });
  } catch (error) {
    const taken = error instanceof Error && 'code' in error && error.code === 'EADDRINUSE';
    console.error(taken ? hostTexts.portTaken(port) : error);
    await link.close();
    process.exit(1);
  }
}

let ending = false;
async function end(): Promise<void> {
  if (ending) return;
  ending = true;
  await host.close();
  await link.close();
  process.exit(0);
}
process.on('SIGINT', () => void end());
process.on('SIGTERM', () => void end());
process.on('SIGHUP', () => void end());
process.on('disconnect', () => void end());
