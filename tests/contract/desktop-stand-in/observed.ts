/** What run-desktop.ts prints. */
export type ServedPage = {
  readonly status: number;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: string;
};

export type Observed = {
  readonly schemes: readonly unknown[];
  readonly schemesBeforeReady: boolean;
  readonly protocols: readonly string[];
  readonly windows: readonly { options: unknown; loaded: readonly string[]; shown: number }[];
  /** By address, as are the next ones. */
  readonly windowOpen: Readonly<Record<string, unknown>>;
  readonly openedOutside: readonly string[];
  readonly navigationPrevented: Readonly<Record<string, boolean>>;
  readonly webviewPrevented: boolean;
  readonly permissionGranted: Readonly<Record<string, boolean>>;
  readonly permissionChecked: Readonly<Record<string, unknown>>;
  readonly requestCancelled: Readonly<Record<string, boolean>>;
  readonly channels: readonly string[];
  readonly pages: Record<string, ServedPage>;
  /** Status of a POST to the page's own address. */
  readonly posted: number;
  /** Answer to a call from the program's own page. */
  readonly own: unknown;
  /** Answers to every channel called from every other frame. */
  readonly foreign: readonly unknown[];
  readonly serviceNames: readonly unknown[];
  readonly errors: readonly string[];
};
