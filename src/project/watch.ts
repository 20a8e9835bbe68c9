/** Is told the name of each input that is looked at: `shared.stock.moss`, `site.units`. */
export type Note = (input: string) => void;

/** A map that tells what is looked up in it, `name.key`; whoever looks through it has looked at all its keys, `name`. */
export function watchMap<V>(map: ReadonlyMap<string, V>, name: string, note: Note): ReadonlyMap<string, V> {
  const one = (key: string): string => {
    note(`${name}.${key}`);
    return key;
  };
  const whole = (): ReadonlyMap<string, V> => {
    note(name);
    return map;
  };
  return {
    get: (key) => map.get(one(key)),
    has: (key) => map.has(one(key)),
    get size() {
      return whole().size;
    },
    keys: () => whole().keys(),
    values: () => whole().values(),
    entries: () => whole().entries(),
    forEach: (visit) => whole().forEach(visit),
    [Symbol.iterator]: () => whole()[Symbol.iterator](),
  };
}

/** An object that tells which of its properties are read; `name` says what each is called, if anything. */
export function watchProperties<T extends object>(
  watched: T,
  name: (key: string) => string | undefined,
  note: Note,
): T {
  return new Proxy(watched, {
    get: (target, key) => {
      const called = typeof key === 'string' ? name(key) : undefined;
      if (called !== undefined) note(called);
      return Reflect.get(target, key);
    },
  });
}
