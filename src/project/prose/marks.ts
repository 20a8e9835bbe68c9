import type { Data, Processor } from 'unified';

type Extension = NonNullable<Data['micromarkExtensions']>[number];
type Construct = Extract<NonNullable<Extension['text']>[number], { readonly tokenize: unknown }>;
type Tokenizer = ThisParameterType<Construct['tokenize']>;

/** More than anybody means; for each, the parser goes through all of the paragraph, or of the text, again. */
const MOST = 1000;

/** What may begin something within a paragraph. */
const MARKS = '*_~[]!`<:&\\';
/** What begins a quote, or a note at the foot. */
const BLOCKS = '>[';

/** What there is too much of, for `too-many` to tell, and where the first is that is not read. */
export class TooManyMarks extends Error {
  readonly facts: { readonly what: string; readonly most: number };
  readonly at: number;

  constructor(what: string, at: number) {
    super();
    this.facts = { what, most: MOST };
    this.at = at;
  }
}

/** Ends the parsing of a text at a paragraph's mark too many, or at a quote or note too many. */
export function boundMarks(this: Processor): void {
  const data = this.data();
  const bounds: Extension = {
    text: counting(MARKS, 'marks in this paragraph'),
    document: counting(BLOCKS, 'quotes and notes in this text'),
  };
  data.micromarkExtensions = [...(data.micromarkExtensions ?? []), bounds];
}

/** Counts, for each paragraph or text that is gone through, what any of some characters may begin. */
function counting(characters: string, what: string): Readonly<Record<number, Construct>> {
  const counts = new WeakMap<Tokenizer, number>();
  const counterOf = (character: number): Construct => ({
    // Where nothing else begins, nothing is counted: a text that ends here would let others begin, as in "::".
    previous: (code) => code !== character,
    tokenize(_, __, nok) {
      return (code) => {
        const count = (counts.get(this) ?? 0) + 1;
        if (count > MOST) throw new TooManyMarks(what, this.now().offset);
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
