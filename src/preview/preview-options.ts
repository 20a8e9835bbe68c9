import type { MakeOptions } from '../make/make-options.ts';
import type { Told } from '../proof/told.ts';

/** What a make in a preview brought. */
type News = {
  /** All that is found now. */
  readonly findings: readonly Told[];
  /** The files that are new or changed, by their paths below the output folder. */
  readonly touched: readonly string[];
  readonly seconds: number;
  /** A broken environment or a bug of our own, in one line: nothing was made. */
  readonly trouble?: string;
};

export type SessionOptions = Omit<
  MakeOptions,
  'pdf' | 'onlyPdf' | 'pdfsLater' | 'only' | 'known' | 'isOver'
> & {
  /** Told after every make that changed something. */
  readonly told: (news: News) => void;
};

export type PreviewOptions = SessionOptions & {
  readonly port: number;
  /** Lets other devices of the network in, each with a key of its own. */
  readonly host?: boolean | undefined;
  /** Told the next key for another device when one was used. */
  readonly entered?: ((key: string) => void) | undefined;
};

export type Preview = {
  readonly address: string;
  readonly port: number;
  /** What lets another device in, once: `?key=` and this behind the address. */
  readonly key: string;
  readonly close: () => Promise<void>;
};
