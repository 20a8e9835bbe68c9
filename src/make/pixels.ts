import type { Raw, Sharp } from 'sharp';

/** A picture as it is laid on another. */
export type Pixels = { readonly input: Buffer; readonly raw: Raw };

/** A picture not written in any format: to write and read it again would take longer than to paint it. */
export async function pixelsOf(image: Sharp): Promise<Pixels> {
  const { data, info } = await image.raw().toBuffer({ resolveWithObject: true });
  const { width, height, channels } = info;
  return { input: data, raw: { width, height, channels } };
}
