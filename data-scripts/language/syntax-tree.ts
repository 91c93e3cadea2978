import { parse as parseSvelte } from 'svelte/compiler';
import { parser as typescript } from 'typescript-eslint';

/** A node of a syntax tree: ESTree in scripts and in the braces of a component, Svelte's own around them. */
export interface SyntaxNode {
  readonly type: string;
  readonly [part: string]: unknown;
}

/** Typed by the package with less than it takes. */
const parseScript = typescript.parseForESLint as unknown as (
  text: string,
  options: { readonly range: boolean },
) => { readonly ast: SyntaxNode };

/** The tree of a `.ts` or `.svelte` source, both in one shape. Throws the parser's error on a source that isn't whole. */
export function parseSource(path: string, text: string): SyntaxNode {
  if (!path.endsWith('.svelte')) return parseScript(text, { range: true }).ast;
  return parseSvelte(text, { modern: true, filename: path }) as never;
}

/** Parts that hold no text of ours: other views of the same nodes, styles, places in the file, types. */
const PASSED_OVER = new Set([
  'css',
  'loc',
  'name_loc',
  'metadata',
  'comments',
  'tokens',
  'typeAnnotation',
  'parent',
]);

/** Goes through a tree in the order of the source; `visit` gets a node and those around it, nearest first, and may say `false` to stay out of it. */
export function walkTree(
  node: SyntaxNode,
  visit: (node: SyntaxNode, around: readonly SyntaxNode[]) => boolean | void,
  around: readonly SyntaxNode[] = [],
): void {
  if (visit(node, around) === false) return;
  const inside = [node, ...around];
  for (const child of childrenOf(node)) walkTree(child, visit, inside);
}

function childrenOf(node: SyntaxNode): SyntaxNode[] {
  const parts = Object.entries(node).filter(([name]) => !PASSED_OVER.has(name));
  const children = parts.flatMap(([, part]) => (Array.isArray(part) ? part : [part])).filter(isNode);
  return children.sort((a, b) => startOf(a) - startOf(b));
}

function isNode(value: unknown): value is SyntaxNode {
  return typeof value === 'object' && value !== null && typeof (value as SyntaxNode).type === 'string';
}

/** Where a node begins, as an index into its source; a fragment begins with its first node. */
export function startOf(node: SyntaxNode): number {
  const [first] = (node.range as readonly number[] | undefined) ?? [node.start as number | undefined];
  if (first !== undefined) return first;
  const [inside] = (node.nodes as readonly SyntaxNode[] | undefined) ?? [];
  return inside ? startOf(inside) : 0;
}

/** The line of an index, from 1. */
export function lineOf(text: string, index: number): number {
  return text.slice(0, index).split('\n').length;
}
