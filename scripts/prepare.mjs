/**
 * What every command does first: install the packages where they are missing or others than the lock names, go on under
 * a Node that is new enough, and build what is stale. On a machine where all that is done it says nothing.
 */
import { buildStale } from './bundles.mjs';
import { installPackages, packagesAreCurrent } from './install.mjs';
import { continueUnderNewNode } from './running-node.mjs';

/**
 * @param {{build: readonly import('./bundles.mjs').BundleName[]}} wanted the bundles that the command needs
 * @throws {import('./project.mjs').Refusal} where the machine lacks something; the message says what to do
 */
export async function prepare({ build }) {
  if (!packagesAreCurrent()) await installPackages();
  await continueUnderNewNode();
  await buildStale(build);
}
