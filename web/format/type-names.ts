import { t } from '../../analysis/language/t.ts';

/** A type's name without what stands in brackets: `Grapefruit` for `Grapefruit (Marsh, Duncan, Ruby types)`. */
export function shortTypeName(name: string): string {
  return name.replace(/\s*\([^)]*\)/g, '');
}

/** A name after its article: `an Orangequat`, `a Eureka lemon`. */
export function withArticle(name: string): string {
  return /^(?!eu)[aeio]/i.test(name) ? t`an ${name}` : t`a ${name}`;
}
