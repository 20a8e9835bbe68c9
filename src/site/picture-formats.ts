/** The shapes of a picture to hand on: `wide` is shown beside a link, the others are posted by hand. */
export type PictureFormat = 'wide' | 'square' | 'tall';

/** In pixels. Beside a link 1.91 to 1, as the services that show it ask for. */
export const PICTURE_SIZES: Readonly<
  Record<PictureFormat, { readonly width: number; readonly height: number }>
> = {
  wide: { width: 1200, height: 630 },
  square: { width: 1080, height: 1080 },
  tall: { width: 1080, height: 1920 },
};
