import type { Rule } from '../rule.ts';

export const cannotBeKitted: Rule<CannotBeKitted> = {
  severity: 'error',
  summary: 'A class kit can be cut from the stock there is.',
  why: 'A kit is planned on whole sheets, so every piece needs a size, a stock and a sheet it fits on once the edges are trimmed. This is checked when a kit is planned, not when a project is only proofed: a project that is never cut for a class needs no sheet size.',
  fails: {
    stock: 'cream: { name: Cream cardstock }',
    pieces: 'front: { stock: cream, cut: 3 x 4 }',
    blames: 'cream',
  },
  passes: { pieces: 'front: { stock: cream, cut: 3 x 4 }' },
  say: (facts) => {
    switch (facts.lack) {
      case 'stock':
        return {
          message: `${facts.piece} names no stock, so it cannot be planned`,
          remedy: 'say what it is cut from, such as stock: cream',
        };
      case 'known stock':
        return { message: `there is no stock "${facts.stock}"`, remedy: 'name one that is there' };
      case 'size':
        return { message: `the size of ${facts.piece} is not known`, remedy: 'run proof to see why' };
      case 'sheet':
        return {
          message: `${facts.stock} has no sheet size, so nothing can be planned on it`,
          remedy: 'give it one, such as sheet: 8 1/2 x 11',
        };
      case 'room':
        return {
          message: `${facts.name} is larger than every sheet of ${facts.stock}`,
          remedy: 'cut it smaller, or from a larger stock',
        };
      case 'room once trimmed':
        return {
          message: `${facts.name} is larger than what is left of a sheet of ${facts.stock} when its edges are trimmed`,
          remedy: 'trim less',
        };
    }
  },
};

/** What a piece, or one sheet of it (`name`), or its stock lacks to be planned. */
type CannotBeKitted =
  | { readonly lack: 'stock' | 'size'; readonly piece: string }
  | { readonly lack: 'known stock' | 'sheet'; readonly stock: string }
  | { readonly lack: 'room' | 'room once trimmed'; readonly name: string; readonly stock: string };
