import { parseArgs } from 'node:util';

import { broughtUpToDate, LANGUAGES, readCatalogue, writeCatalogue } from '../language/catalogue.ts';
import { catalogueFaults } from '../language/check-catalogue.ts';
import { rawTexts } from '../language/raw-texts.ts';
import { catalogueOf, findPhrases } from '../language/source-phrases.ts';
import { print, runCommand, tell } from './run-command.ts';

const HELP = `npm run language [-- [--check | --raw | --strings] [FOLDER...]]

Brings the catalogues in web/language up to date with what the sources say: adds new phrases untranslated, drops those no
longer said, keeps what is translated. FOLDER, for example web/views/life, limits it; "data-files" is the texts of data files.

  --check    change nothing; tell what is missing, unused or wrong, and end with 1 where something is
  --raw      list texts of components that no t\`...\` holds, and end with 1 where there are any
  --strings  list strings in scripts that look like texts for people and are in no t\`...\`
`;

await runCommand('language', async () => {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: {
      check: { type: 'boolean' },
      raw: { type: 'boolean' },
      strings: { type: 'boolean' },
      help: { type: 'boolean' },
    },
  });
  if (values.help) return print(HELP);
  const root = process.cwd();
  const folders = positionals.map((folder) => folder.replace(/\/$/, ''));
  if (values.raw || values.strings) return list(rawTexts(root, folders, values.raw ? 'markup' : 'scripts'));
  const asked = folders.map((folder) => catalogueOf(`${folder}/x`));
  const isAsked = (name: string): boolean =>
    asked.length === 0 || asked.some((folder) => name === folder || name.startsWith(`${folder}-`));
  const said = findPhrases(root);
  if (values.check) {
    return list(
      LANGUAGES.flatMap((language) => catalogueFaults(readCatalogue(root, language), said, isAsked)),
    );
  }
  for (const language of LANGUAGES) {
    const catalogue = broughtUpToDate(readCatalogue(root, language), said);
    const changed = writeCatalogue(root, language, catalogue, isAsked);
    const entries = [...catalogue].filter(([name]) => isAsked(name)).flatMap(([, held]) => held);
    const missing = entries.filter(({ translation }) => translation === '').length;
    tell(
      `${language}: ${entries.length} phrases, ${missing} untranslated; changed: ${changed.join(', ') || 'nothing'}`,
    );
  }
});

async function list(lines: readonly string[]): Promise<void> {
  await print(lines.map((line) => `${line}\n`).join(''));
  tell(lines.length === 0 ? 'Nothing found.' : `${lines.length} found.`);
  if (lines.length > 0) process.exitCode = 1;
}
