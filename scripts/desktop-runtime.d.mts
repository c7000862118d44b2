/** Absolute path of the runtime's program, or null where it is not on this machine. */
export function findDesktopRuntime(): string | null;
/** Why the runtime, though present, cannot open a window here; null where nothing speaks against it. */
export function whyNoWindow(): string | null;
/** Why the desktop specs cannot run on this machine; null where they can. */
export function whyNoDesktopSpecs(): string | null;
