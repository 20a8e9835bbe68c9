import type { Image, Root } from 'mdast';
import type { Finding } from '../finding.ts';
import type { Place, SourceFile } from '../source.ts';
import { placeOf, rewrite, sourceOf } from './markdown.ts';

/** Whether a path, relative to the project's folder, is a file there; `outside` when a link on disk leads out. */
export type PictureState = 'there' | 'missing' | 'outside';
export type FindPicture = (path: string) => PictureState;

/**
 * Checks every picture of a tree. Those that leave the project's folder are taken out; of the others `url` becomes
 * the plain path on disk.
 */
export function checkPictures(
  root: Root,
  file: SourceFile,
  find: FindPicture,
  report: (finding: Finding) => void,
): void {
  rewrite(root, (node) => {
    if (node.type !== 'image') return undefined;
    const at = picturePlace(node, file);
    const path = pathWithin(node.url);
    const state = path === undefined ? 'outside' : find(path);
    if (path === undefined || state === 'outside') {
      report({ rule: 'outside-picture', at, facts: { path: node.url } });
      return [];
    }
    if (state === 'missing') report({ rule: 'missing-picture', at, facts: { path } });
    return [{ ...node, url: path }];
  });
}

/** Where a picture's path stands, or the whole picture where it is given by reference. */
export function picturePlace(image: Image, file: SourceFile): Place {
  const whole = placeOf(image, file);
  const path = /\]\(\s*<?([^\s<>]+(?:[^<>]*(?=>))?)/du.exec(sourceOf(image, file));
  const [, written] = path ?? [];
  const [, span] = path?.indices ?? [];
  if (written === undefined || !span) return whole;
  const start = whole.start + span[0];
  return { file, start, end: start + written.replace(/\)$/u, '').length };
}

/** The path on disk a picture's address means, with `/` between; undefined when it leaves the project's folder. */
export function pathWithin(url: string): string | undefined {
  const decoded = decode(url)?.replaceAll('\\', '/');
  if (decoded === undefined || decoded.includes('\0')) return undefined;
  if (/^[a-z][a-z0-9+.-]*:/iu.test(decoded) || decoded.startsWith('/')) return undefined;
  const parts: string[] = [];
  for (const part of decoded.split('/')) {
    if (part === '' || part === '.') continue;
    if (part !== '..') parts.push(part);
    else if (parts.pop() === undefined) return undefined;
  }
  return parts.length > 0 ? parts.join('/') : undefined;
}

function decode(url: string): string | undefined {
  try {
    return decodeURIComponent(url);
  } catch {
    // A lone % is part of a name: `50%.jpg`.
    return /%(?:2e|2f|5c|00)/iu.test(url) ? undefined : url;
  }
}
