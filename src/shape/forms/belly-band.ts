import { Length } from '../../measure/length.ts';
import { roundUp } from '../../measure/round.ts';
import type { Form } from '../form.ts';
import { ease } from '../forming/allowance.ts';
import { readTab } from '../forming/box.ts';
import { form, optional, optionalLength } from '../forming/form.ts';
import { mountain } from '../forming/layout.ts';
import { customary } from '../forming/ruler.ts';

/**
 * A band about a card, a stack or a box, glued behind. About something under 1/8 in (3 mm) thick it is folded flat
 * at both sides; about anything thicker it has side panels. It is a little larger than what it goes about, so that
 * it slides: common practice, no source.
 */
export const bellyBand: Form = form({
  name: 'belly band',
  summary: 'A band that wraps around a card, a stack or a box and is glued at the back.',
  size: {
    parameters: {
      around: optional(
        'size',
        'width x thickness of what the band goes about; the paper and a little room to slide are added',
      ),
      inside: optional(
        'size',
        'width x thickness of the room in the band, instead of around, or where that names a piece',
      ),
    },
    alternatives: true,
    read: (settings) => {
      const key = ['around', 'inside'].find((each) => settings.has(each));
      const [width, depth] = settings.lengths(key ?? '');
      const room = key === 'around' ? ease(settings.ruler) : Length.zero;
      return width && depth && { width, depth: depth.value, room };
    },
  },
  parameters: {
    height: optionalLength('height of the band; 1 1/2 in (38 mm) by default'),
    tab: optionalLength('how far the ends overlap; 1/2 in (13 mm) by default'),
  },
  panels: ['front', 'back', 'left', 'right'],
  example: {
    settings: ['around: 4 1/4 x 1/16', 'height: 1 1/2'],
  },
  closing: 'Wrap the band around the item it is for, glue it, and slide it off to dry.',
  accessory: true,
  goesRound: true,
  measure: (settings, { width, depth, room }) => {
    const { ruler, caliper } = settings;
    const spare = caliper.times(2).plus(room);
    // The tab lies inside the back.
    const deep = depth.plus(spare).plus(caliper);
    const flat = depth.lessThan(customary(ruler, 1, 8));
    const across = flat ? width.value.plus(depth) : width.value;
    const panel = roundUp(across.plus(spare), ruler.groove);
    settings.limit(width.value, width.at, 'the width', settings.foldable);
    const height = settings.length('height', customary(ruler, 3, 2), [settings.foldable]);
    const tab = readTab(settings, panel, 'inside the back');
    return { width: panel, sides: flat ? [] : [roundUp(deep, ruler.groove)], height, tab };
  },
  layout: ({ width, sides, height, tab }) => {
    const isFlat = sides.length === 0;
    const panels = isFlat ? ['back', 'front', 'tab'] : ['back', 'left', 'front', 'right', 'tab'];
    const pairs = panels.slice(1).map((panel, index) => `${panels[index]}|${panel}`);
    return {
      columns: [width, ...sides, width, ...sides, tab],
      rows: [height],
      cells: [panels],
      roles: { front: 'front' },
      bends: [mountain(1, pairs, isFlat ? 180 : 90)],
      taper: ['tab'],
      glue: [['tab', 'back']],
    };
  },
});
