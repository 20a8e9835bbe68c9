import { DRAWN_PICTURE, drawnPicture as drawingOf } from '../card.ts';
import type { Output } from '../output.ts';

/** `site/<slug>/picture.svg`: what the list shows of a project that has no photo. */
export const drawnPicture: Output = {
  ofProject: (material) => {
    const drawing = material.pictures.length === 0 ? drawingOf(material) : undefined;
    return drawing ? [{ path: `site/${material.slug}/${DRAWN_PICTURE}`, produce: () => drawing.svg }] : [];
  },
};
