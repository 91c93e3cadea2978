import { t } from '../../analysis/language/t.ts';
import { InputError } from '../../analysis/records/input-error.ts';

/** A value that can be bound to a parameter. */
export type Parameter = string | number | boolean | null;

/**
 * The statements of `analysis/records/sql` name their parameters (`$station`); DuckDB-WASM binds by position only. Gives
 * the statement with `$1`, `$2`... and the values in that order. Comments go, text in quotes stays.
 * @throws InputError when a parameter has no value, or a value no parameter
 */
export function bindNamed(
  sql: string,
  values: Readonly<Record<string, Parameter>>,
): { sql: string; parameters: Parameter[] } {
  const order: string[] = [];
  const text = sql.replace(
    /--[^\n]*|\/\*[\s\S]*?\*\/|'(?:[^']|'')*'|"(?:[^"]|"")*"|\$([a-z_][a-z0-9_]*)/gi,
    (found, name: string | undefined) => {
      if (found.startsWith('--') || found.startsWith('/*')) return ' ';
      if (name === undefined) return found;
      if (!Object.hasOwn(values, name)) throw new InputError(t`The statement needs a value for $${name}.`);
      if (!order.includes(name)) order.push(name);
      return `$${order.indexOf(name) + 1}`;
    },
  );
  const extra = Object.keys(values).find((name) => !order.includes(name));
  if (extra !== undefined) throw new InputError(t`The statement has no parameter $${extra}.`);
  return { sql: text.trim(), parameters: order.map((name) => values[name]) };
}
