/** Where columns stand in a header, and the names of those taken and left out, as the file has them. */
export interface NamedColumns<Role extends string> {
  readonly at: Readonly<Partial<Record<Role, number>>>;
  readonly used: readonly string[];
  readonly ignored: readonly string[];
}

/**
 * Finds columns by the names each may have: lower case without accents, blanks and marks (`codigopostal` for `Código
 * postal`). Of several that mean the same, the one named first in `known` is taken.
 */
export function namedColumns<Role extends string>(
  header: readonly string[],
  known: Readonly<Record<Role, readonly string[]>>,
): NamedColumns<Role> {
  const plain = header.map(plainName);
  const at: Partial<Record<Role, number>> = {};
  for (const [role, names] of Object.entries(known) as [Role, readonly string[]][]) {
    const found = names.map((name) => plain.indexOf(name)).find((index) => index >= 0);
    if (found !== undefined) at[role] = found;
  }
  const taken = new Set(Object.values(at));
  return {
    at,
    used: header.filter((_, index) => taken.has(index)),
    ignored: header.filter((name, index) => !taken.has(index) && name !== ''),
  };
}

function plainName(name: string): string {
  return name
    .normalize('NFD')
    .toLowerCase()
    .replace(/[^a-z0-9]/g, '');
}
