import { phraseKey } from '../../analysis/language/t.ts';
import { walkTree, type SyntaxNode } from './syntax-tree.ts';

interface Quasi {
  readonly value: { readonly cooked: string };
}

/** True for `` t`...` ``. */
function isPhrase({ type, tag }: SyntaxNode): boolean {
  return type === 'TaggedTemplateExpression' && (tag as SyntaxNode).name === 't';
}

/** The key of each phrase a source says, in the order of the source: `` t`...` `` and `said('...')`. */
export function phrasesIn(tree: SyntaxNode): string[] {
  const found: string[] = [];
  walkTree(tree, (node) => {
    if (isPhrase(node)) {
      const { quasis } = node.quasi as { readonly quasis: readonly Quasi[] };
      found.push(phraseKey(quasis.map(({ value }) => value.cooked)));
    } else if (node.type === 'CallExpression' && (node.callee as SyntaxNode).name === 'said') {
      const [text] = node.arguments as readonly SyntaxNode[];
      if (text?.type === 'Literal' && typeof text.value === 'string') found.push(text.value);
    }
  });
  return found;
}
