/** Our script that has a browser's page keep scripts, out of reach for what is written into it. */
export const SCRIPTS = 'const SCRIPTS = []';

/** The scripts of ours that a page keeps: one that comes with each page anew is compiled and warmed up anew. */
export class KeptScripts {
  readonly #numbers = new Map<string, number>();

  /** Our script that hands the page those of some that it does not have. */
  keep(scripts: readonly string[]): string {
    const fresh = scripts.filter((script) => !this.#numbers.has(script));
    return fresh.map((script) => `SCRIPTS[${this.#added(script)}] = () => {\n${script}\n};`).join('\n');
  }

  /** Our script that runs some that are kept. */
  run(scripts: readonly string[]): string {
    return scripts.map((script) => `SCRIPTS[${this.#numbers.get(script)}]();`).join('\n');
  }

  #added(script: string): number {
    const number = this.#numbers.size;
    this.#numbers.set(script, number);
    return number;
  }
}
