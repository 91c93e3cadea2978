import { readFileSync } from 'node:fs';
import path from 'node:path';

import { speakingSources } from './source-phrases.ts';
import { lineOf, parseSource, startOf, walkTree, type SyntaxNode } from './syntax-tree.ts';

/** What is the same in every language: units, formats, names of files and programs. */
const SAME_EVERYWHERE =
  /°[FC]|\b(?:km|m|px|cm|mi|ft|h|ha|kB|MB|GB|CSV|SQL|DuckDB|WebAssembly|Arrow|JSON|QR|PDF|N|S|E|W|English|Español)\b/g;

/** Attributes of elements that people read or hear. */
const READ_ATTRIBUTES =
  /^(?:aria-(?:label|description|roledescription|valuetext|placeholder)|title|placeholder|alt|label|summary)$/;

/** Elements whose text is code, and a mark for what isn't to be translated. */
const CODE = new Set(['code', 'pre', 'kbd', 'samp', 'script', 'style']);

function hasWords(text: string): boolean {
  return /\p{L}/u.test(text.replace(SAME_EVERYWHERE, ''));
}

/**
 * Texts that no `` t`...` `` holds, as `file:line: text`. `markup`: what components show, every one a fault. `scripts`: strings
 * in code that look like a text for people, some of them wrongly.
 */
export function rawTexts(root: string, folders: readonly string[], where: 'markup' | 'scripts'): string[] {
  const isAsked = (source: string): boolean =>
    folders.length === 0 || folders.some((folder) => source === folder || source.startsWith(`${folder}/`));
  return speakingSources(root)
    .filter((source) => isAsked(source) && (where === 'scripts' || source.endsWith('.svelte')))
    .flatMap((source) => {
      const text = readFileSync(path.join(root, source), 'utf8');
      const found = (where === 'markup' ? textsOfMarkup : textsOfScripts)(parseSource(source, text));
      return found.map(
        ({ node, words }) => `${source}:${lineOf(text, startOf(node))}: ${words.replace(/\s+/g, ' ').trim()}`,
      );
    });
}

interface Found {
  readonly node: SyntaxNode;
  readonly words: string;
}

function textsOfMarkup(tree: SyntaxNode): Found[] {
  const found: Found[] = [];
  walkTree(tree, (node, around) => {
    if (node.type === 'RegularElement' && (CODE.has(node.name as string) || isKept(node))) return false;
    if (node.type === 'StyleDirective') return false;
    if (node.type !== 'Text' || !hasWords(node.data as string)) return undefined;
    const attribute = around.find(({ type }) => type === 'Attribute');
    if (!attribute || isRead(attribute, around, node.data as string))
      found.push({ node, words: `${attribute ? `${String(attribute.name)}=` : ''}${String(node.data)}` });
    return undefined;
  });
  return [...found, ...stringsShown(tree)].sort((a, b) => startOf(a.node) - startOf(b.node));
}

/** `translate="no"`: a name, the same in every language. */
function isKept({ attributes }: SyntaxNode): boolean {
  return (attributes as readonly SyntaxNode[]).some(({ name }) => name === 'translate');
}

function isRead(attribute: SyntaxNode, around: readonly SyntaxNode[], text: string): boolean {
  if (READ_ATTRIBUTES.test(attribute.name as string)) return true;
  const owner = around[around.indexOf(attribute) + 1];
  return owner.type === 'Component' && looksLikeText(text);
}

/** Strings in the braces of markup, and in a phrase's values, that reach the screen as they are. */
function stringsShown(tree: SyntaxNode): Found[] {
  const found: Found[] = [];
  walkTree(tree, (node, around) => {
    const words = stringOf(node);
    if (words === null || !hasWords(words) || !looksLikeText(words)) return;
    const tag = around.findIndex(({ type }) => type === 'ExpressionTag');
    if (tag < 0 || isOfCode(node, around)) return;
    const attribute = around[tag + 1]?.type === 'Attribute' ? around[tag + 1] : undefined;
    if (attribute && !isRead(attribute, around, words)) return;
    found.push({ node, words });
  });
  return found;
}

function textsOfScripts(tree: SyntaxNode): Found[] {
  const found: Found[] = [];
  walkTree(tree, (node, around) => {
    const words = stringOf(node);
    if (words !== null && hasWords(words) && looksLikeText(words) && !isOfCode(node, around))
      found.push({ node, words });
  });
  return found;
}

/** Two words or more, or one that begins like a sentence. */
function looksLikeText(text: string): boolean {
  return /\p{L}{2,}[,;:]? \p{L}+/u.test(text) || /^\s*\p{Lu}\p{Ll}+[.:]?\s*$/u.test(text);
}

/** The text of a literal or of a template that no tag takes. */
function stringOf(node: SyntaxNode): string | null {
  if (node.type === 'Literal') return typeof node.value === 'string' ? node.value : null;
  if (node.type !== 'TemplateLiteral') return null;
  const quasis = node.quasis as readonly { readonly value: { readonly cooked: string } }[];
  return quasis.map(({ value }) => value.cooked).join('…');
}

/** Strings that no one reads: what is imported, compared, taken by a tag, a type, a key, thrown as a fault of ours. */
function isOfCode(node: SyntaxNode, around: readonly SyntaxNode[]): boolean {
  const [nearest] = around;
  if (/^(?:Import|Export|TSLiteralType|TSEnum|BinaryExpression|SwitchCase)/.test(nearest.type)) return true;
  if (nearest.type === 'TaggedTemplateExpression') return true;
  // What an option stands for is an id; what is read of it is its label.
  if (nearest.type === 'Property' && (nearest.key === node || (nearest.key as SyntaxNode).name === 'value'))
    return true;
  const thrown = around.find(({ type }) => type === 'NewExpression');
  if (['Error', 'RangeError', 'TypeError'].includes((thrown?.callee as SyntaxNode)?.name as string))
    return true;
  const called = around.find(({ type }) => type === 'CallExpression');
  return (called?.callee as SyntaxNode)?.name === 'said';
}
