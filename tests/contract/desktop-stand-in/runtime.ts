/**
 * Stands in for the desktop runtime, which cannot be had on every machine: the parts that electron/main.ts and
 * electron/shell/ use, each of which keeps what it was told. Utility processes are real ones, forked.
 */
import { fork } from 'node:child_process';
import { EventEmitter } from 'node:events';
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';

type Answer = (...values: unknown[]) => unknown;

/** Settles when the program shows the user something: its window, or why there is none. */
export const shown = Promise.withResolvers<void>();

export const told = {
  ready: false,
  schemes: [] as unknown[],
  schemesBeforeReady: false,
  protocols: new Map<string, (request: Request) => Promise<Response>>(),
  channels: new Map<string, Answer>(),
  windows: [] as BrowserWindow[],
  openedOutside: [] as string[],
  quits: 0,
  errors: [] as string[],
  permissionRequest: null as Answer | null,
  permissionCheck: null as Answer | null,
  beforeRequest: null as Answer | null,
  serviceNames: [] as unknown[],
  menu: [] as unknown[],
};

class Program extends EventEmitter {
  readonly isPackaged = false;

  requestSingleInstanceLock(): boolean {
    return true;
  }

  whenReady(): Promise<void> {
    told.ready = true;
    return Promise.resolve();
  }

  quit(): void {
    told.quits += 1;
    const event = { prevented: false, preventDefault: () => (event.prevented = true) };
    this.emit('before-quit', event);
    if (!event.prevented) this.emit('quit');
  }
}
export const app = new Program();

export class WebContents extends EventEmitter {
  openHandler: Answer | null = null;

  setWindowOpenHandler(handler: Answer): void {
    this.openHandler = handler;
  }
}

export class BrowserWindow extends EventEmitter {
  readonly webContents = new WebContents();
  readonly options: unknown;
  readonly loaded: string[] = [];
  shown = 0;

  constructor(options: unknown) {
    super();
    this.options = options;
    told.windows.push(this);
    shown.resolve();
  }

  static getAllWindows(): BrowserWindow[] {
    return told.windows;
  }

  static getFocusedWindow(): null {
    return null;
  }

  loadURL(address: string): Promise<void> {
    this.loaded.push(address);
    return Promise.resolve();
  }

  show(): void {
    this.shown += 1;
  }

  focus(): void {
    this.emit('focus');
  }
}

export const ipcMain = {
  handle(channel: string, answer: Answer): void {
    if (told.channels.has(channel))
      throw new Error(`Attempted to register a second handler for '${channel}'`);
    told.channels.set(channel, answer);
  },
};

export const protocol = {
  registerSchemesAsPrivileged(schemes: readonly unknown[]): void {
    told.schemes.push(...schemes);
    told.schemesBeforeReady = !told.ready;
  },
  handle(scheme: string, answer: (request: Request) => Promise<Response>): void {
    told.protocols.set(scheme, answer);
  },
};

export const net = {
  /** Files only, and an error of the network where there is none, as the runtime has it. */
  async fetch(address: string): Promise<Response> {
    const content = await readFile(fileURLToPath(address)).catch(() => {
      throw new Error('net::ERR_FILE_NOT_FOUND');
    });
    return new Response(new Uint8Array(content));
  },
};

export const session = {
  defaultSession: {
    setPermissionRequestHandler(handler: Answer): void {
      told.permissionRequest = handler;
    },
    setPermissionCheckHandler(handler: Answer): void {
      told.permissionCheck = handler;
    },
    webRequest: {
      onBeforeRequest(listener: Answer): void {
        told.beforeRequest = listener;
      },
    },
  },
};

export const shell = {
  openExternal(address: string): Promise<void> {
    told.openedOutside.push(address);
    return Promise.resolve();
  },
};

export const dialog = {
  showErrorBox(_title: string, content: string): void {
    told.errors.push(content);
    shown.resolve();
  },
  showSaveDialog(): Promise<{ canceled: true }> {
    return Promise.resolve({ canceled: true });
  },
};

export const Menu = {
  buildFromTemplate: (template: unknown): unknown => template,
  setApplicationMenu(template: unknown): void {
    told.menu.push(template);
  },
};

export const utilityProcess = {
  fork(path: string, _args: readonly string[], options: { readonly serviceName: string }) {
    told.serviceNames.push(options.serviceName);
    const child = fork(path, [], { stdio: ['ignore', 'ignore', 'inherit', 'ipc'] });
    return {
      postMessage: (message: object) => {
        if (child.connected) child.send(message, () => undefined);
      },
      on: (event: string, receive: (value: unknown) => void) => child.on(event, receive),
      once: (event: string, receive: (code: number | null) => void) => child.once(event, receive),
      kill: () => child.kill('SIGKILL'),
    };
  },
};
