import { versions } from 'node:process';

/**
 * How long a function runs before machine code is made of it: several times longer than usual. Within seconds, what is
 * made earlier seldom pays for itself; it took a fifth of a make, and as much of the tests. By the engines of Node 20,
 * 22 and 24; another may call it something else.
 */
const FLAGS: Readonly<Partial<Record<string, string>>> = {
  '11.3': '--interrupt-budget=600000',
  '12.4': '--invocation-count-for-turbofan=12000',
  '13.6': '--invocation-count-for-turbofan=12000',
};

/** The flag that this engine has for it, if we know one. */
export const patience: string | undefined = FLAGS[versions.v8.split('.', 2).join('.')];
