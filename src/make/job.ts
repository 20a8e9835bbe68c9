/** One file to be made. */
export type Job = {
  /** Below the output folder, with `/` between: `site/seed-keeper/index.html`. */
  readonly path: string;
  /**
   * Everything its bytes follow from, where making it is slow; asked for when its turn has come. When this is what it was last time and the file is
   * still there untouched, it is not made again.
   */
  readonly from?: () => string;
  /** Whether the browser makes it. */
  readonly isPrinted?: true;
  readonly produce: () => Promise<Uint8Array> | Uint8Array | string;
};
