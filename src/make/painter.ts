import { bundledFile } from '../recall/program.ts';
import { PainterProcess } from './painter-process.ts';
import type { Painting } from './painting.ts';

/** What paints and encodes pictures. Nothing starts, and no picture library is loaded, before its first. */
export type Painter = Painting & { readonly close: () => Promise<void> };

/**
 * In a process of its own, where the program is bundled: the C library keeps for each thread that wrote a picture much of what
 * it took, hundreds of megabytes in all, unless it is told otherwise before it starts.
 */
export function openPainter(script: string | undefined = bundledFile('painter.js')): Painter {
  if (script === undefined) return painterHere();
  const painter = new PainterProcess(script);
  return {
    encodePhoto: (...given) => painter.ask('encodePhoto', given),
    paintIcon: () => painter.ask('paintIcon', []),
    paintLinkPicture: (...given) => painter.ask('paintLinkPicture', given),
    close: () => painter.close(),
  };
}

function painterHere(): Painter {
  const load = async (): Promise<Painting> => (await import('./painting.ts')).painting;
  return {
    encodePhoto: async (...given) => (await load()).encodePhoto(...given),
    paintIcon: async () => (await load()).paintIcon(),
    paintLinkPicture: async (...given) => (await load()).paintLinkPicture(...given),
    close: async () => {},
  };
}
