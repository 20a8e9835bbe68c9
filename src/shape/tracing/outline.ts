import type { Size } from '../../measure/size.ts';
import type { OutlineGrammar } from '../../project/grammar/outline-grammar.ts';
import type { AtSize } from '../../project/sizes-as-written.ts';
import type { Settings } from '../forming/settings.ts';
import type { FlatPoint, NamedOutline } from '../net.ts';

/** A ready-made outline of a flat piece or an opening. One file each in `outlines/`. */
export type Outline = OutlineGrammar &
  Pick<NamedOutline, 'across' | 'round'> & {
    /** What it is, in a sentence for the docs. */
    readonly summary: string;
    /** What a sheet calls it, in English, with its settings by their keys: `banner with a notch {notch} deep`. */
    readonly said: string;
    /**
     * Its corners and the points of its arcs, clockwise, as large as the size holds. What cannot be is refused by the
     * settings, and then the points count for nothing.
     */
    readonly trace: (size: Size, settings: Settings, written: AtSize) => readonly FlatPoint[];
  };
