/** A type's name without what stands in brackets: `Grapefruit` for `Grapefruit (Marsh, Duncan, Ruby types)`. */
export function shortTypeName(name: string): string {
  return name.replace(/\s*\([^)]*\)/g, '');
}
