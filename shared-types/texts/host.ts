/** What the loopback host says on the terminal and to a browser it does not know. */
export const hostTexts = {
  open: (address: string) => `Teardown Docket is open at ${address}`,
  stopHint: 'Close it with Ctrl+C. Everything is saved as you go.',
  refused: 'This request did not come from the program’s own window and was refused.',
  needsAddress:
    'Open the program with the whole address that was printed on the terminal when it was started: it holds the key.',
  notHere: 'There is nothing at this address.',
  failed: 'The program could not answer. Reload the window.',
  noPort: (given: string) => `${given} is no port: a port is a number from 0 to 65535, 0 for any free one.`,
  portTaken: (port: number) =>
    `Port ${port} of this computer is taken by another program. Give another, or leave it out for any free one.`,
  usage: 'Usage: npm run host -- [--library DIR] [--port N]',
} as const;
