import { Length } from '../../measure/length.ts';

/**
 * What the United States Postal Service took as a letter: Domestic Mail Manual 101.1.1 and 1.2 as archived on
 * 4 January 2010 (pe.usps.com). Rules and prices change; whoever mails asks the post office.
 */
export const US_LETTER: {
  readonly asOf: string;
  readonly least: Dimensions;
  readonly most: Dimensions;
  readonly mostOunces: number;
  /** Length over height, in tenths, within which the machines take it. */
  readonly ratio: { readonly least: number; readonly most: number };
} = {
  asOf: '2010-01-04',
  least: { length: inches(5, 1), height: inches(7, 2), thickness: inches(7, 1000) },
  most: { length: inches(23, 2), height: inches(49, 8), thickness: inches(1, 4) },
  mostOunces: 3.5,
  ratio: { least: 13, most: 25 },
};

type Dimensions = { readonly length: Length; readonly height: Length; readonly thickness: Length };

/** What is put in the post: `length` runs along the lines of the address, whichever side is longer. */
type MailPiece = Dimensions & { readonly ounces?: number | undefined };

/**
 * What may come of it. Below the least size it may not be mailed at all; a nonmachinable letter is one that no machine
 * takes, for which more is charged.
 */
export type LetterVerdict =
  | 'letter'
  | `too-${'small' | 'large' | 'thick' | 'heavy'}`
  | `nonmachinable-${'square' | 'long'}`;

/** What a rectangular piece of mail counts as. */
export function letterVerdict(piece: MailPiece): LetterVerdict {
  const { least, most, mostOunces, ratio } = US_LETTER;
  if (piece.length.lessThan(least.length) || piece.height.lessThan(least.height)) return 'too-small';
  if (piece.thickness.lessThan(least.thickness)) return 'too-small';
  if (isTooLarge(piece)) return 'too-large';
  if (piece.thickness.greaterThan(most.thickness)) return 'too-thick';
  if ((piece.ounces ?? 0) > mostOunces) return 'too-heavy';
  const tenfold = piece.length.times(10);
  if (tenfold.lessThan(piece.height.times(ratio.least))) return 'nonmachinable-square';
  return tenfold.greaterThan(piece.height.times(ratio.most)) ? 'nonmachinable-long' : 'letter';
}

/** The size goes by the longer side, however the address is written. */
function isTooLarge({ length, height }: MailPiece): boolean {
  const { most } = US_LETTER;
  const [long, short] = [Length.max(length, height), Length.min(length, height)];
  return long.greaterThan(most.length) || short.greaterThan(most.height);
}

function inches(numerator: number, denominator: number): Length {
  return Length.of(numerator, denominator, 'in');
}
