import { encodePhoto } from './encode-photo.ts';
import { paintIcon } from './paint-icon.ts';
import { paintLinkPicture } from './paint-link-picture.ts';

/** All that the picture library does for a make. */
export type Painting = {
  readonly encodePhoto: typeof encodePhoto;
  readonly paintIcon: typeof paintIcon;
  readonly paintLinkPicture: typeof paintLinkPicture;
};

export const painting: Painting = { encodePhoto, paintIcon, paintLinkPicture };
