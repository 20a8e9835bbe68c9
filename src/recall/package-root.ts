import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder that holds package.json and templates/, wherever this code was compiled to or installed. */
export function packageRoot(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, 'templates')) || !existsSync(join(folder, 'package.json'))) {
    const parent = dirname(folder);
    if (parent === folder)
      throw new Error('the templates folder is not beside the program: install it again');
    folder = parent;
  }
  return folder;
}

/** The version of package.json, named in everything that is made. */
export function packageVersion(): string {
  const read: unknown = JSON.parse(readFileSync(join(packageRoot(), 'package.json'), 'utf8'));
  return typeof read === 'object' && read !== null && 'version' in read ? String(read.version) : '0';
}
