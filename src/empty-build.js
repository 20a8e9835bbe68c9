// Removes what was compiled before: of a source that is gone, the package would keep the types.
import { rmSync } from 'node:fs';

for (const name of ['modules', 'types'])
  rmSync(new URL(`../dist/${name}`, import.meta.url), { recursive: true, force: true });
