/**
 * Adds to an object a property that is worked out whenever it is asked for; `whenAsked` keeps an answer
 * that is dear.
 *
 * A getter written in the object says the same, but gives each object a shape of its own in memory that
 * is seldom cleared. All that the getter can reach stays there with it, and edits wait for it.
 */
export function onDemand<Key extends string>(
  key: Key,
): <Made extends object, Value>(
  made: Made,
  work: () => Value,
) => Made & { readonly [K in Key]: Value } {
  const worker = Symbol(key);
  const property: PropertyDescriptor = {
    enumerable: true,
    get(this: Readonly<Record<symbol, () => unknown>>) {
      return this[worker]?.();
    },
  };
  return (made, work) => {
    Object.defineProperty(made, worker, { value: work });
    return Object.defineProperty(made, key, property) as never;
  };
}
