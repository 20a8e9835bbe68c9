import { describe, expect, it } from 'vitest';
import { type Layout, layoutNet, mountain } from '../../../src/shape/forming/layout.ts';
import { shareNet } from '../../../src/shape/forming/share-net.ts';
import { build, CARDSTOCK, inches, roundedBy } from './building.ts';

const card = (eighths: number): Layout => ({
  columns: [inches(eighths, 8), inches(3)],
  rows: [inches(4)],
  cells: [['back', 'front']],
  bends: [mountain(1, ['back|front'], 180)],
});

describe('the net of a layout', () => {
  it('is one for all pieces that are laid out alike, and what it would be by itself', () => {
    const net = shareNet(card(24), CARDSTOCK);
    expect(shareNet(card(24), CARDSTOCK)).toBe(net);
    expect(net).toEqual(layoutNet(card(24)));
  });

  it('is another where a length, a fold or the paper is another', () => {
    const net = shareNet(card(24), CARDSTOCK);
    expect(shareNet(card(25), CARDSTOCK)).not.toBe(net);
    expect(shareNet({ ...card(24), bends: [mountain(1, ['back|front'], 90)] }, CARDSTOCK)).not.toBe(net);
    expect(shareNet(card(24), CARDSTOCK.times(2))).not.toBe(net);
  });

  it('is a piece’s own where that has rounded corners', () => {
    const round = (): Layout => ({ ...card(24), corners: roundedBy(inches(1, 4)) });
    expect(shareNet(round(), CARDSTOCK)).not.toBe(shareNet(round(), CARDSTOCK));
  });

  it('is forgotten once enough others were asked for', () => {
    const net = shareNet(card(24), CARDSTOCK);
    for (let eighths = 100; eighths < 1000; eighths += 1) shareNet(card(eighths), CARDSTOCK);
    expect(shareNet(card(24), CARDSTOCK)).not.toBe(net);
  });

  it('is kept while it is asked for, whatever else is', () => {
    const net = shareNet(card(24), CARDSTOCK);
    for (let eighths = 100; eighths < 1000; eighths += 1) {
      shareNet(card(eighths), CARDSTOCK);
      if (eighths % 100 === 0) expect(shareNet(card(24), CARDSTOCK)).toBe(net);
    }
  });

  it('is shared by two boxes of one form and size', () => {
    const [one, other] = [1, 2].map(() => build('tray', { settings: { inside: '4 x 3 x 1' } }));
    expect(one?.ok && other?.ok && one.net === other.net).toBe(true);
  });
});
