import { createRequire } from 'node:module';
import type sharp from 'sharp';

const require = createRequire(import.meta.url);
let loaded: typeof sharp | undefined;

/** The picture library, once there is something to paint: to load it takes as long as a page takes to be drawn. */
export function loadSharp(): typeof sharp {
  if (!loaded) {
    loaded = require('sharp') as typeof sharp;
    // Its own cache helps nobody who encodes each picture once, and takes memory.
    loaded.cache(false);
  }
  return loaded;
}
