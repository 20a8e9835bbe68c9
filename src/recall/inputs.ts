import { join } from 'node:path';
import { LEDGER_FILE } from '../project/ledger/ledger.ts';
import { digestOf } from '../project/source.ts';
import { addressesOf, ledgersNaming, sharedFiles, type WorkspaceTexts } from '../project/workspace-texts.ts';
import { findKept, keptPath } from './kept.ts';
import type { Stamps } from './stamps.ts';

/** Inputs by name, each with the digest of what it was: what something was made from. */
export type Trace = Readonly<Record<string, string>>;

/**
 * Everything that something can be made from, by name, and what each is now: `sheet`; `revisions`, its ledger
 * on disk, and `ledger`, the one it is made with, which may be about to be published; `site.title`, and `site`
 * whole; `shared.stock.moss`, `shared.stock` (which there are), `shared` whole; `addresses.bulb-box`, `addresses`;
 * `picture photos/a.jpg` (whether it is there), `photo photos/a.jpg` (what it shows), `drawing leaf.svg`,
 * `published shared.small-box` (the ledgers that speak of it), `kept 1` (what was handed out with a revision), `font my-font.ttf` (from the root); and whatever is
 * the same for all projects, such as `templates`.
 */
export class Inputs {
  readonly #texts: WorkspaceTexts;
  readonly #stamps: Stamps;
  /** Those that are the same for all projects. */
  readonly #common: Map<string, string>;
  /** Those of one, by its folder and their names. */
  readonly #own = new Map<string, string>();

  constructor(texts: WorkspaceTexts, stamps: Stamps) {
    this.#texts = texts;
    this.#stamps = stamps;
    const addresses = [...addressesOf(texts)];
    this.#common = new Map([
      ['site', this.#digestOfFiles('site.yaml')],
      ['shared', digestOf(sharedFiles(texts).map(({ path, text }) => digestOf([path, text])))],
      ['addresses', digestOf(addresses.map(([address]) => address))],
      ...addresses.map(([address, folders]) => [`addresses.${address}`, digestOf(folders)] as const),
    ]);
  }

  /** Says what an input is now that is the same for all projects. */
  set(name: string, digest: string): void {
    this.#common.set(name, digest);
  }

  /** Says what an input of one project is now, in the place of what there is on disk. */
  setOf(folder: string, name: string, digest: string): void {
    this.#own.set(`${folder}/${name}`, digest);
  }

  /** What an input of a project is now, the same as long as this lasts; empty where there is none of that name. */
  digest(folder: string, name: string): string {
    const common = this.#common.get(name);
    if (common !== undefined) return common;
    const key = `${folder}/${name}`;
    const digest = this.#own.get(key) ?? this.#look(folder, name);
    this.#own.set(key, digest);
    return digest;
  }

  #look(folder: string, name: string): string {
    const { root, findPicture, readDrawing } = this.#texts;
    const [kind, path = ''] = name.split(/ (.*)/su);
    switch (kind) {
      case 'sheet':
        return this.#digestOfFiles(`${folder}/sheet.md`);
      case 'ledger':
      case 'revisions':
        return this.#digestOfFiles(`${folder}/${LEDGER_FILE}`);
      case 'picture':
        return findPicture(folder, path);
      case 'photo':
        return this.#stamps.digestOf(join(root, folder, path)) ?? '';
      case 'published':
        return this.#digestOfPublished(path);
      case 'kept':
        return this.#digestOfKept(folder, Number(path));
      case 'font':
        return this.#stamps.digestOf(join(root, path)) ?? '';
      case 'drawing':
        return digestOf([JSON.stringify(readDrawing(folder, path))]);
      default:
        return '';
    }
  }

  /** The same for all projects. */
  #digestOfPublished(use: string): string {
    const ledgers = ledgersNaming(use, this.#texts);
    const digest = digestOf(ledgers.flatMap(({ path, text }) => [path, text]));
    this.#common.set(`published ${use}`, digest);
    return digest;
  }

  #digestOfKept(folder: string, revision: number): string {
    const { root } = this.#texts;
    const paths = findKept(this.#texts, folder, revision).map(keptPath);
    return digestOf(paths.flatMap((path) => [path, this.#stamps.digestOf(join(root, folder, path)) ?? '']));
  }

  /** What all these inputs are now. */
  trace(folder: string, names: Iterable<string>): Trace {
    return Object.fromEntries([...names].sort().map((name) => [name, this.digest(folder, name)]));
  }

  /** The inputs that are no longer what they were. */
  changed(folder: string, trace: Trace): readonly string[] {
    return Object.keys(trace).filter((name) => this.digest(folder, name) !== trace[name]);
  }

  /** Of a text that could not be read as one, what is wrong with it counts. */
  #digestOfFiles(path: string): string {
    const { files, findings } = this.#texts;
    const file = files.get(path);
    if (!file) return '';
    const trouble = findings.filter(({ at }) => at.file === file);
    return digestOf([file.text, ...trouble.map(({ rule, facts }) => JSON.stringify([rule, facts]))]);
  }
}
