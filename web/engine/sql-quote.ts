/** Text as an SQL literal; only for the few statements that take no parameters (`attach`). */
export function quoted(text: string): string {
  return `'${text.replaceAll("'", "''")}'`;
}
