/**
 * Hands out the value before again while a new one is equal (compared as JSON), so that nothing which follows from it is
 * worked out or asked once more.
 */
export function steady<T>(): (next: T) => T {
  let kept: { readonly value: T; readonly json: string } | null = null;
  return (next) => {
    const json = JSON.stringify(next);
    if (kept?.json !== json) kept = { value: next, json };
    return kept.value;
  };
}
