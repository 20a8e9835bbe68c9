import type { Length } from '../../measure/length.ts';
import { roundDown, roundUp } from '../../measure/round.ts';
import { type Ruler, say } from '../../shape/forming/ruler.ts';
import type { Rule } from '../rule.ts';

type Facts = FormLimit | { readonly reason: string; readonly remedy: string };

export const formLimit: Rule<Facts> = {
  severity: 'error',
  summary: 'A ready-made form stays within its limits.',
  why: 'Beyond certain proportions a form stops working: flaps grow longer than the opening they close, tabs wider than what they are glued to. The finding names the limit and the measurement that passes it, before any paper is cut.',
  fails: { pieces: 'box: { stock: cream, form: clip-top box, inside: 1 x 1 1/2 x 3 }', blames: '1 1/2' },
  passes: { with: '1 1/2 x 1 x 3', insteadOf: '1 x 1 1/2 x 3' },
  say: (facts) => {
    if ('reason' in facts) return { message: facts.reason, remedy: facts.remedy };
    const { measure, length, bound, limit, ruler, why } = facts;
    const [is, than] =
      bound === 'least' ? ['less', roundUp(limit, ruler.step)] : ['more', roundDown(limit, ruler.step)];
    const mark = than.sign > 0 ? than : limit;
    return {
      message: `${measure} is ${say(ruler, length)}, ${is} than ${say(ruler, limit)}: ${why}`,
      remedy: `make it at ${bound} ${say(ruler, mark)}`,
    };
  },
};

/** A measurement that passes a limit. Other reasons are a form's own, with what would put it right. */
type FormLimit = {
  /** `the depth of box`. */
  readonly measure: string;
  readonly length: Length;
  readonly bound: 'least' | 'most';
  readonly limit: Length;
  /** What the form is measured with. */
  readonly ruler: Ruler;
  /** What would happen beyond it. */
  readonly why: string;
};
