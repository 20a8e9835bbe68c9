import { bundledFile } from '../recall/program.ts';
import { PressThread } from './press-thread.ts';
import { openPrinter, type Printer, type PrinterOptions } from './printer.ts';

/** What a make asks of a printer. */
export type Press = Pick<Printer, 'pdf' | 'warmUp' | 'rest' | 'close'>;

/**
 * A printer in a thread of its own, where the program is bundled: the browser waits for nothing that is drawn meanwhile, and
 * what talks to it is loaded beside all else. Nothing starts before its first page.
 */
export function openPress(
  options: Pick<PrinterOptions, 'browser' | 'endpoints'>,
  script: string | undefined = bundledFile('presser.js'),
): Press {
  return script === undefined ? openPrinter(options) : new PressThread(script, options);
}
