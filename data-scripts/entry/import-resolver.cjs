/**
 * How the linter finds the file behind an import, for the rule that holds the arrows between rooms: relative imports
 * carry their extension, and a `?raw`, `?url` or `?worker` at the end says how to load the file, not which one it is.
 */
const { existsSync } = require('node:fs');
const { dirname, resolve } = require('node:path');

exports.interfaceVersion = 2;

/** Path of the file, `null` for packages and what Node brings along, or "not found". */
exports.resolve = (source, importer) => {
  if (!source.startsWith('.')) return { found: true, path: null };
  const path = resolve(dirname(importer), source.replace(/\?[a-z&]+$/, ''));
  return existsSync(path) ? { found: true, path } : { found: false };
};
