import { UnreadableFont } from '../print/fault.ts';

/** Why nothing was painted, as plain data for another process; of a font its family. */
export type PaintFault = { readonly message: string; readonly family?: string };

export function paintFaultOf(error: unknown): PaintFault {
  const message = error instanceof Error ? error.message : String(error);
  return { message, ...(error instanceof UnreadableFont && { family: error.family }) };
}

export function paintErrorFrom({ message, family }: PaintFault): Error {
  return family === undefined ? new Error(message) : new UnreadableFont(message, family);
}
