import type { Data, Processor } from 'unified';

type Extension = NonNullable<Data['micromarkExtensions']>[number];
type Construct = Extract<NonNullable<Extension['text']>[number], { readonly tokenize: unknown }>;

/** More than any paragraph has; to match them, the parser goes through all of a paragraph again for each. */
export const MOST_MARKS = 1000;

/** What may begin something within a paragraph. */
const MARKS = '*_~[]!`<:&\\';

/** Says where the first mark is that is not read. */
export class TooManyMarks extends Error {
  readonly at: number;

  constructor(at: number) {
    super();
    this.at = at;
  }
}

/** Ends the parsing of a text at a paragraph's mark too many. */
export function boundMarks(this: Processor): void {
  const counts = new WeakMap<ThisParameterType<Construct['tokenize']>, number>();
  const counter: Construct = {
    tokenize(_, __, nok) {
      return (code) => {
        const count = (counts.get(this) ?? 0) + 1;
        if (count > MOST_MARKS) throw new TooManyMarks(this.now().offset);
        counts.set(this, count);
        return nok(code);
      };
    },
  };
  const data = this.data();
  const text = Object.fromEntries([...MARKS].map((mark) => [mark.charCodeAt(0), counter]));
  data.micromarkExtensions = [...(data.micromarkExtensions ?? []), { text }];
}
