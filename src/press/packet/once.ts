/** The same function, whose result is made when first asked for and kept. */
export function once<Result>(make: () => Result): () => Result {
  let made: { readonly result: Result } | undefined;
  return () => {
    made ??= { result: make() };
    return made.result;
  };
}
