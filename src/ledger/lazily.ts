/** Values that are worked out when they are first asked for, and then kept. */
export function lazily<T extends object>(make: { readonly [K in keyof T]-?: () => T[K] }): T {
  const made = {} as T;
  for (const key of Object.keys(make) as (keyof T)[])
    Object.defineProperty(made, key, {
      enumerable: true,
      configurable: true,
      get: () => {
        const value = make[key]();
        Object.defineProperty(made, key, { enumerable: true, value });
        return value;
      },
    });
  return made;
}
