import { chooseLanguage } from './language/languages.ts';
import { speakLanguage } from './language/speak-language.ts';
import { openStorage } from './state/open-storage.ts';

// A link from paper comes folded.
if (/[?&]s=/.test(location.search)) await (await import('./state/short-address.ts')).unfoldAddress(window);

await speakLanguage(chooseLanguage(location.search, openStorage(), navigator.languages), navigator.languages);
// Only now: constants of modules are said when they are first read. The built page asks for these files at once (preloadPage).
await import('./page.ts');
