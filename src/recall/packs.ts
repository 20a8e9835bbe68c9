import { join, relative } from 'node:path';
import { digestOf } from '../project/source.ts';
import { cacheFolder, homeFolder } from './cache-folder.ts';
import { Pack } from './pack.ts';
import { programDigest } from './program.ts';

/** Of what was worked out, and of the digests of files. */
export type Packs = readonly [found: Pack, stamps: Pack];

/** Those of one workspace, as it is named from one folder. */
export function openPacks(root: string, namedFrom: string): Packs {
  const cache = join(cacheFolder({ env: process.env, home: homeFolder() }), 'work');
  // Findings name files as a person in that folder would.
  const name = digestOf([root, relative(namedFrom, root)]);
  return [new Pack(cache, `${name}-found`, programDigest()), new Pack(cache, `${name}-stamps`, '')];
}
