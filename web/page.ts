import { mount } from 'svelte';
import App from './App.svelte';
import { AnswerState } from './state/answer-state.svelte.ts';
import { Choices } from './state/choices.svelte.ts';
import { defaultUnit } from './state/default-unit.ts';
import { openStorage } from './state/open-storage.ts';
import { packFetch } from './kept/pack-files.ts';
import { PackState } from './state/pack-state.svelte.ts';
import { PageState } from './state/page.svelte.ts';
import { readAddress } from './state/address.ts';
import { ThemeChoice } from './state/theme.svelte.ts';
import { AssessClient } from './workers/assess-client.ts';
import './styles/fonts.css';
import './styles/tokens.css';
import './styles/base.css';
import './styles/print.css';

const storage = openStorage();
const client = new AssessClient();
const page = new PageState({
  storage,
  choices: new Choices(
    { unit: defaultUnit(navigator.languages, storage) },
    readAddress(location.search).chosen,
  ),
  packs: new PackState(new URL('packs/', document.baseURI).href, packFetch, async () =>
    (await import('./kept/kept-packs.ts')).listKept(),
  ),
  answer: new AnswerState(client),
  later: client,
  theme: new ThemeChoice(storage, document.documentElement, matchMedia('(prefers-color-scheme: dark)')),
});

mount(App, { target: document.getElementById('page')!, props: { page } });
