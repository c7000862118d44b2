import { shippedPath } from '../../electron/processes/entry-table.ts';

/**
 * Variables for the processes that these tests start over and over: what Node has compiled once is not compiled again
 * (it compares the sources first). https://nodejs.org/api/cli.html#node_compile_cachedir
 */
export const quickStart: Readonly<Record<string, string>> = {
  NODE_COMPILE_CACHE: shippedPath('node_modules', '.cache', 'teardown-docket', 'compiled'),
};
