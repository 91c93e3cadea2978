import { chooseLanguage } from './language/languages.ts';
import { speakLanguage } from './language/speak-language.ts';
import { openStorage } from './state/open-storage.ts';

/** The page itself comes only once its language is chosen: constants of modules are said when they are first read. */
async function begin(): Promise<void> {
  // A link from paper comes folded.
  if (/[?&]s=/.test(location.search)) await (await import('./state/short-address.ts')).unfoldAddress(window);
  await speakLanguage(
    chooseLanguage(location.search, openStorage(), navigator.languages),
    navigator.languages,
  );
  // The built page asks for these files at once (preloadPage).
  await import('./page.ts');
}

// Not awaited up here: with that the bundler would part what is always loaded together into a hundred small files.
void begin();
