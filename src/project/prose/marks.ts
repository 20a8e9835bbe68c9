import type { Data, Processor } from 'unified';
import type { Finding } from '../finding.ts';

type Extension = NonNullable<Data['micromarkExtensions']>[number];
type Construct = Extract<NonNullable<Extension['text']>[number], { readonly tokenize: unknown }>;
type Tokenizer = ThisParameterType<Construct['tokenize']>;

/** More than anybody means; for each, the parser goes through all of the paragraph, or of the text, again. */
const MOST = 1000;

/** What may begin something within a paragraph. */
const MARKS = '*_~[]!`<:&\\';
/** What begins a quote, or a note at the foot. */
const BLOCKS = '>[';

/** Marks within a paragraph, or quotes and notes within a text. */
type Counted = { readonly what: string; readonly isWithin: 'paragraph' | 'text'; readonly each: RegExp };

const IN_PARAGRAPH: Counted = {
  what: 'marks in this paragraph',
  isWithin: 'paragraph',
  each: /([*_~[\]!`<:&\\])(?!\1)/gu,
};
const IN_TEXT: Counted = {
  what: 'quotes and notes in this text',
  isWithin: 'text',
  each: /(?<=^[ \t>]*)(?:>|\[(?=\^))/gmu,
};

/** What there is too much of, and where the first is that is not read. */
export class TooManyMarks extends Error {
  readonly counted: Counted;
  readonly at: number;

  constructor(counted: Counted, at: number) {
    super();
    this.counted = counted;
    this.at = at;
  }
}

/** What `too-many` tells of a stretch of text. */
export function countMarks(
  { counted: { what, each } }: TooManyMarks,
  text: string,
): Finding<'too-many'>['facts'] {
  return { what, count: Math.max(text.match(each)?.length ?? 0, MOST + 1), most: MOST };
}

/** Ends the parsing of a text at a paragraph's mark too many, or at a quote or note too many. */
export function boundMarks(this: Processor): void {
  const data = this.data();
  const bounds: Extension = {
    text: counting(MARKS, IN_PARAGRAPH),
    document: counting(BLOCKS, IN_TEXT),
  };
  data.micromarkExtensions = [...(data.micromarkExtensions ?? []), bounds];
}

/** Counts, for each paragraph or text that is gone through, what any of some characters may begin. */
function counting(characters: string, counted: Counted): Readonly<Record<number, Construct>> {
  const counts = new WeakMap<Tokenizer, number>();
  const counterOf = (character: number): Construct => ({
    // Where nothing else begins, nothing is counted: a text that ends here would let others begin, as in "::".
    previous: (code) => code !== character,
    tokenize(_, __, nok) {
      return (code) => {
        const count = (counts.get(this) ?? 0) + 1;
        if (count > MOST) throw new TooManyMarks(counted, this.now().offset);
        counts.set(this, count);
        return nok(code);
      };
    },
  });
  return Object.fromEntries(
    [...characters].map((each) => {
      const character = each.charCodeAt(0);
      return [character, counterOf(character)];
    }),
  );
}
