/**
 * Makes a value when it is first asked for. What touches `Intl` first loads data of languages for 10 to 30 ms, so no
 * module may do so while a program starts: it may never be needed.
 */
export function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => (made ??= { value: make() }).value;
}
