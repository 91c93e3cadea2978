import ICAL from 'ical.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { NO_LEVEL_GAIN_SPREADS } from '../../../../analysis/tree/level-gains.ts';
import { MATURE_TREE } from '../../../../analysis/tree/penalties.ts';
import { inventedNights } from '../../../analysis/place/invented-nights.ts';
import { forgetSpanish, inSpanish } from '../../../in-spanish.ts';

/** Words that no Spanish sentence of the year has. */
const ENGLISH = /\b(?:the|of|and|from|by|in|nights?|winters?|is|are|dates?|lost|until|tree|cover)\b/i;

/** What says something holds its words from when it is loaded: it is loaded once the language is chosen. */
async function load() {
  const [answer, catalogue, covers, rows, words, tasks, calendar] = await Promise.all([
    import('../../../../analysis/answer/year-answer.ts'),
    import('../../../../analysis/tree/catalogue.ts'),
    import('../../../../web/format/cover-words.ts'),
    import('../../../../web/views/year/strip-rows.ts'),
    import('../../../../web/views/year/year-words.ts'),
    import('../../../../web/views/year/task-words.ts'),
    import('../../../../web/views/year/calendar-file.ts'),
  ]);
  return { ...answer, ...catalogue, ...covers, ...rows, ...words, ...tasks, ...calendar };
}

describe('the year in Spanish', () => {
  let said: Awaited<ReturnType<typeof load>>;
  beforeAll(async () => {
    said = await inSpanish(load);
  });
  afterAll(forgetSpanish);

  it.each([
    ['north', 31, 3],
    ['south', -31, 6],
  ] as const)('tells dates, crops and tasks %s of the equator', (hemisphere, lat, middleC) => {
    const site = { lat, lon: -42, elevationM: 20, coastKm: 10 };
    const { members, nights } = inventedNights({
      seed: 3,
      winters: 30,
      sites: [site],
      middleC,
      south: lat < 0,
    });
    const subject = {
      place: { label: 'Sallowmere', lat, lon: -42, elevation_m: 20, basis: 'station' as const },
      winters: members[0].winters,
      neighbours: [],
      evidence: [],
      notes: [],
    };
    const answer = said.answerYear(subject, nights[0], {
      types: [said.findType('satsuma_owari')!, said.findType('eureka_lemon')!],
      tree: MATURE_TREE,
      gains: NO_LEVEL_GAIN_SPREADS,
      calendar: 'gulf',
      draws: 50,
    });
    const told = answer.types.flatMap((type) => [
      ...said
        .stripRows(answer, type, 'C', false)
        .flatMap(({ label, detail, words, after }) => [label, detail, words, after]),
      ...type.tasks.flatMap((task) => [said.whyWords(task, 'C'), said.whyWords(task, 'F')]),
      said.pickingSentence(type.harvest, answer.winters),
      said.ripeWords(type.harvest.basis, answer.calendar, hemisphere),
      ...said.earlyAndLate(type.early_late!, type.levels[1].dates, true).map(({ sentence }) => sentence),
    ]);
    const sentences = [...told, ...answer.notes, said.treeSentence(MATURE_TREE, '', said.NO_COVER)];
    expect(sentences.filter((sentence) => ENGLISH.test(sentence))).toEqual([]);
    const whys = answer.types.flatMap(({ tasks }) => tasks.map((task) => said.whyWords(task, 'C')));
    expect(whys.join(' ')).toContain('otra noche a \u22122,2\u00a0°C o menos en esta fecha');
    expect(whys.join(' ')).toMatch(/\(intervalo del 90\u00a0%: \d+ de [a-z]+ a /);
    expect(told.join(' ')).toMatch(/ya ha llegado para el \d+\u00a0de\u00a0[a-z]+ en 1 invierno de cada 10/);

    const text = said.calendarFile({
      tasks: answer.types[0].tasks,
      typeId: answer.types[0].id,
      typeName: answer.types[0].name,
      placeLabel: 'Sallowmere',
      startYear: 2027,
      madeAtMs: Date.UTC(2026, 10, 25),
      estimated: true,
      inventedRegion: 'Sallowmere Coast',
    });
    const calendar = new ICAL.Component(ICAL.parse(text));
    expect(calendar.getFirstPropertyValue('prodid')).toMatch(/\/\/ES$/);
    const events = calendar.getAllSubcomponents('vevent').map((event) => new ICAL.Event(event));
    expect(events.map(({ summary }) => summary)).toContain(
      'Plantar, a partir de ahora (Mandarina satsuma, tipo Owari)',
    );
    for (const { description } of events) {
      const own = description.split('\n').filter((line) => !line.startsWith('Fuentes: '));
      expect(own.filter((line) => ENGLISH.test(line))).toEqual([]);
      expect(own.at(-1)).toBe(said.CALENDAR_CAUTION);
    }
  });
});
