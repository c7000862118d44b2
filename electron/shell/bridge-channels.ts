/** Names on the desktop's own line between preload and shell, beside the contract's channels. */
export const callPrefix = 'call:';
export const takeInChannel = 'docket:take-in';
export const deliverChannel = 'docket:deliver';
export const listenChannel = 'docket:listen';
export const eventChannel = 'docket:event';

/** The page's origin in the desktop program: a scheme of our own, never file://. */
export const pageScheme = 'docket';
export const pageOrigin = `${pageScheme}://app`;
