import { describe, expect, it } from 'vitest';
import type { Assessment } from '../../../analysis/answer/assessment.ts';
import { AnswerState } from '../../../web/state/answer-state.svelte.ts';
import { Choices } from '../../../web/state/choices.svelte.ts';
import type { Chosen } from '../../../web/state/chosen.ts';
import { PackState } from '../../../web/state/pack-state.svelte.ts';
import { FIRST_TYPE, PageState } from '../../../web/state/page.svelte.ts';
import { ThemeChoice } from '../../../web/state/theme.svelte.ts';
import { PACK } from './sample-pack.ts';

const ASSESSMENT = {
  types: [
    { id: 'yuzu', levels: [{ level: 'wood' }, { level: 'kill' }] },
    { id: FIRST_TYPE, levels: [{ level: 'wood' }] },
  ],
} as unknown as Assessment;

/** The page with the made-up pack open and one answer given. */
async function openPage(chosen: Chosen): Promise<PageState> {
  const files: Record<string, unknown> = {
    'index.json': [PACK.entry],
    'made-up/pack.json': PACK.meta,
    'made-up/stations.json': PACK.stations,
    'made-up/places.json': PACK.places,
  };
  const base = 'http://localhost/packs/';
  const page = new PageState({
    choices: new Choices({ unit: 'C' }, chosen),
    packs: new PackState(base, async (url) => ({
      ok: url.slice(base.length) in files,
      status: 404,
      json: async () => files[url.slice(base.length)],
    })),
    answer: new AnswerState({
      assess: async () => ASSESSMENT,
      depthDuration: async () => [],
      stationPeriods: async () => [],
      winterNights: async () => [],
    }),
    theme: new ThemeChoice(null, { dataset: {} }),
    storage: null,
    later: {
      readings: () => Promise.reject(new Error('not asked for here')),
      comparison: async () => [],
      coverPeriods: () => Promise.reject(new Error('not asked for here')),
      leastCover: () => Promise.reject(new Error('not asked for here')),
      nightsSource: async () => ({ stationId: 'S1' }),
    },
  });
  expect(page.question).toBeNull();
  await page.packs.load(null);
  await page.answer.ask(page.question!);
  return page;
}

describe('the page', () => {
  it('asks for the default place and the mature tree, and tells about the first type', async () => {
    const page = await openPage({});
    expect(page.question).toMatchObject({
      place: { by: 'point', label: 'Made Town', lat: 31, lon: -42.02, elevationM: null },
      years: 10,
      tree: { ageYears: 10, hardened: true },
    });
    expect([page.focus?.id, page.focusLevel?.level]).toEqual([FIRST_TYPE, 'wood']);
    expect(page.periodsQuestion).toMatchObject({ typeId: FIRST_TYPE, level: 'wood' });
  });

  it('follows every choice', async () => {
    const page = await openPage({ type: 'yuzu', level: 'kill', ageYears: 2, notHardened: true });
    expect([page.focus?.id, page.focusLevel?.level]).toEqual(['yuzu', 'kill']);
    page.choices.choose({ place: { by: 'station', id: 'ZZ3' }, years: 20 });
    expect(page.question).toMatchObject({
      place: { by: 'station', id: 'ZZ3' },
      years: 20,
      tree: { ageYears: 2, hardened: false },
    });
  });

  it('asks nothing anew when only another choice changed', async () => {
    const page = await openPage({ ageYears: 2 });
    const [question, periods, tree] = [page.question, page.periodsQuestion, page.choices.tree];
    page.choices.choose({ place: { by: 'station', id: 'ZZ3' } });
    expect(page.question).not.toBe(question);
    expect(page.periodsQuestion).toBe(periods);
    expect(page.choices.tree).toBe(tree);
    const there = page.question;
    page.choices.choose({ level: 'fruit', unit: 'F', place: { by: 'station', id: 'ZZ3' } });
    expect(page.question).toBe(there);
    expect(page.periodsQuestion).not.toBe(periods);
  });

  it('names the place and the tree that the answer on screen is about, until there is another', async () => {
    const page = await openPage({ ageYears: 2 });
    expect([page.toldLabel, page.toldTree.ageYears]).toEqual(['Made Town', 2]);
    page.choices.choose({ place: { by: 'postcode', code: 'SC 117' }, ageYears: 7 });
    const there = page.place?.label;
    expect(there).toMatch(/^SC 117/);
    expect([page.toldLabel, page.toldTree.ageYears]).toEqual(['Made Town', 2]);
    const coming = page.answer.ask(page.question!);
    expect([page.answer.status, page.toldLabel]).toEqual(['working', 'Made Town']);
    await coming;
    expect([page.toldLabel, page.toldTree.ageYears]).toEqual([there, 7]);
    expect(page.labelOf(page.question!.place)).toBe(there);
    expect([page.labelOf({ by: 'station', id: 'ZZ3' }), page.labelOf({ by: 'station', id: 'gone' })]).toEqual(
      ['Hill Farm', 'this place'],
    );
  });

  it('stays with what it knows when a link names what it does not', async () => {
    const page = await openPage({ type: 'nope', place: { by: 'postcode', code: 'QQ 9' } });
    expect(page.place?.station.id).toBe('ZZ1');
    expect(page.placeProblem).toMatch(/“QQ 9”/);
    expect([page.focus?.id, page.typeProblem]).toEqual([
      FIRST_TYPE,
      'There is no type “nope” in the catalogue.',
    ]);
  });
});
