import { BrowserMissing, PrintFault, UnreadableFont } from '../print/fault.ts';
import { findMistake } from '../project/finding.ts';
import { startOf } from '../project/source.ts';
import type { Told } from '../proof/told.ts';
import type { Recall, Spot } from '../recall/recall.ts';
import { Unwritable } from './files.ts';
import { NAMED_FAMILY } from './typeface.ts';

/** A browser that fails at a page of one project after the other is itself at fault. */
const MOST_UNPRINTED = 3;

/** What breaks while projects are made. */
export class Mishaps {
  readonly #recall: Pick<Recall, 'commons'>;
  /** How many projects had a page that the browser failed at, since it last printed those of one. */
  #unprinted = 0;
  #isFontTold = false;

  constructor(recall: Pick<Recall, 'commons'>) {
    this.#recall = recall;
  }

  /** Notes that the browser serves. */
  notePrinted(): void {
    this.#unprinted = 0;
  }

  /** Tells of what broke on one project. @throws The same error where it would break on the others just as well. */
  async tell(error: unknown, { file }: Pick<Spot, 'file'>): Promise<readonly Told[]> {
    if (error instanceof Unwritable || error instanceof BrowserMissing) throw error;
    if (error instanceof UnreadableFont && error.family === NAMED_FAMILY) return this.#tellOfFont();
    if (error instanceof PrintFault) this.#unprinted += 1;
    if (this.#unprinted > MOST_UNPRINTED) throw error;
    const { tellFinding } = await import('../proof/tell.ts');
    return [tellFinding(findMistake('making this project', error, startOf(file)))];
  }

  /** Tells once of the font that the settings name. */
  async #tellOfFont(): Promise<readonly Told[]> {
    const { font, fontAt } = (await this.#recall.commons()).site;
    if (!font || !fontAt || this.#isFontTold) return [];
    this.#isFontTold = true;
    const { tellFinding } = await import('../proof/tell.ts');
    const facts = { path: font.path, problem: 'damaged' } as const;
    return [tellFinding({ rule: 'unreadable-font', at: fontAt, facts })];
  }
}
