/** The sheet of a card of one piece: hardly anything is quicker to make. */
export const CARD_SHEET: string = `---
title: Card
measurements:
  unit: in
  stock: { cream: { name: Cream cardstock, sheet: 8 1/2 x 11 } }
  pieces: { card: { stock: cream, cut: 4 x 5 } }
---
A card.

## Cut it
Cut :piece[card].
`;
