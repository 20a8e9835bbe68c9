import sharp, { type Raw, type Sharp } from 'sharp';

/** A picture not written in any format: to write and read it again would take longer than to paint it. */
export type Pixels = { readonly bytes: Buffer; readonly raw: Raw };

/** A place on a picture, in pixels. */
export type PictureBox = {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
};

/** Red, green and blue. */
const BANDS = 3;

export async function pixelsOf(image: Sharp): Promise<Pixels> {
  const { data, info } = await image.toColourspace('srgb').raw().toBuffer({ resolveWithObject: true });
  const { width, height, channels } = info;
  return { bytes: data, raw: { width, height, channels } };
}

/** Red, green and blue of a picture; where it lets something through, a color (`#rrggbb`) is seen. */
export function opaquePixelsOf(image: Sharp, background: string): Promise<Pixels> {
  return pixelsOf(image.flatten({ background }));
}

/** To be resized, or written in some format. */
export function imageOf({ bytes, raw }: Pixels): Sharp {
  return sharp(bytes, { raw });
}

/**
 * A picture that others are laid on. The picture library would blend every pixel of it once more for each of them, which
 * took three quarters of the time of a link picture.
 */
export class Ground {
  readonly #bytes: Buffer;
  readonly #raw: Raw;

  /** A white one. */
  constructor({ width, height }: { readonly width: number; readonly height: number }) {
    this.#raw = { width, height, channels: BANDS };
    this.#bytes = Buffer.alloc(width * height * BANDS, 255);
  }

  /** Paints a place in a color, `#rrggbb`. */
  fill({ left, top, width, height }: PictureBox, color: string): void {
    const row = Buffer.alloc(width * BANDS, Buffer.from(color.slice(1), 'hex'));
    for (let y = top; y < top + height; y += 1) row.copy(this.#bytes, this.#offset(left, y));
  }

  /** Lays an opaque picture on it, whose upper left corner comes to a place; what stands over the edge is cut off. */
  lay({ bytes, raw: { width, height } }: Pixels, left: number, top: number): void {
    const wide = Math.min(width, this.#raw.width - left);
    const high = Math.min(height, this.#raw.height - top);
    for (let y = 0; y < high; y += 1) {
      const from = y * width * BANDS;
      bytes.copy(this.#bytes, this.#offset(left, top + y), from, from + wide * BANDS);
    }
  }

  get pixels(): Pixels {
    return { bytes: this.#bytes, raw: this.#raw };
  }

  #offset(left: number, top: number): number {
    return (top * this.#raw.width + left) * BANDS;
  }
}
