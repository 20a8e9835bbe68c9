/** A browser's program and how it is started. */
export type Launchable = {
  readonly path: string;
  /** A headless shell prints several times faster than the whole browser, which needs another flag to stay hidden. */
  readonly kind: 'shell' | 'full';
  /** The folder of the libraries it brings along. */
  readonly libraries?: string;
  /** The list of font folders it is to use instead of the system's (a file for fontconfig). */
  readonly fonts?: string;
};

/** A browser that may serve, and where it was found, in words for a message. */
export type Candidate = Launchable & { readonly found: string };
