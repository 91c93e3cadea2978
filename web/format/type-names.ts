import { t } from '../../analysis/language/t.ts';

/** A type's name without what stands in brackets: `Grapefruit` for `Grapefruit (Marsh, Duncan, Ruby types)`. */
export function shortTypeName(name: string): string {
  return name.replace(/\s*\([^)]*\)/g, '');
}

/** Names in a row, held apart by semicolons where one of them has a comma of its own. */
export function namesInRow(names: readonly string[]): string {
  return names.join(names.some((name) => name.includes(',')) ? '; ' : ', ');
}

/** A name after its article: `an Orangequat`, `a Eureka lemon`. */
export function withArticle(name: string): string {
  return /^(?!eu)[aeio]/i.test(name) ? t`an ${name}` : t`a ${name}`;
}
