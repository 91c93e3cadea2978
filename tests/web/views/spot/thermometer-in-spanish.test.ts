import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  asText,
  inventedStation,
  readingsBeside,
} from '../../../analysis/spot/thermometer/invented-station.ts';
import { forgetSpanish, inSpanish } from '../../../in-spanish.ts';

/** Words that no Spanish sentence of readings has. */
const ENGLISH = /\b(?:the|of|and|from|nights?|line|readings?|is|are|station|dates?|by)\b/i;
const NIGHTS = inventedStation();

/** What says something holds its words from when it is loaded: it is loaded once the language is chosen. */
async function load() {
  const [calibrate, read, words, offset, invented] = await Promise.all([
    import('../../../../analysis/spot/thermometer/calibrate.ts'),
    import('../../../../analysis/spot/thermometer/read-readings.ts'),
    import('../../../../web/views/spot/thermometer-words.ts'),
    import('../../../../web/views/spot/spot-words.ts'),
    import('../../../../web/views/spot/invented-readings.ts'),
  ]);
  return { ...calibrate, ...read, ...words, ...offset, ...invented };
}

describe('an own thermometer in Spanish', () => {
  let said: Awaited<ReturnType<typeof load>>;
  beforeAll(async () => {
    said = await inSpanish(load);
  });
  afterAll(forgetSpanish);
  const compare = (text: string) => {
    const read = said.readReadings(text, 'El texto');
    const beside = { nights: NIGHTS, from: 'El registro del paquete', latDeg: 31 };
    return { read, ...said.calibrate(read, beside, said.NO_CHOICES, 'F') };
  };

  it('tells what was read and what came of it', () => {
    const { read, estimate, ...calibration } = compare(
      asText(readingsBeside(NIGHTS, { count: 60, step: 1 })),
    );
    const told = [
      said.readSentence(read),
      said.unitSentence({ ...calibration, estimate }),
      said.offsetSentence('calm', estimate.calm!, 'C'),
      said.nightsSentence(estimate.calm!),
      said.weightSentence('windy', estimate.windy!),
      said.unclearSentence(estimate.nights.unclear),
      said.pairedSentence(60, 3, 'C'),
    ];
    for (const sentence of told) expect(sentence).not.toMatch(ENGLISH);
    expect(told[0]).toMatch(/^60 noches, del \d+ de \p{L}+ de \d{4} al \d+ de \p{L}+ de \d{4}\.$/u);
    expect(told[2]).toMatch(/^En noches en calma este rincón es \d,\d\s°C más suave que la estación/);
  });

  it('reads its own invented readings with their unit', () => {
    const text = said.inventedReadings(NIGHTS);
    expect(text).toMatch(/^Mañana,Mínima \(°F\)\n/);
    expect(said.readReadings(text, 'El texto').unit).toBe('F');
  });

  it('tells faults, too few nights and lines that can’t be read', () => {
    const readings = readingsBeside(NIGHTS);
    readings[5]!.shown += 30;
    const [fault] = compare(asText(readings)).faults;
    expect(fault).toMatchObject({ id: 'outlier', mend: { label: 'Dejar fuera' } });
    expect(fault!.sentence).not.toMatch(ENGLISH);
    const late = compare('2030-01-05,28\n2030-01-06,30\n2030-01-07,31');
    expect(late.problem!.sentence).toMatch(
      /^El registro del paquete termina el .* y las lecturas propias empiezan el 5 de enero de 2030, así que no se conoce ninguna noche en ambos lados\./,
    );
    expect(() => said.readReadings('2030-01-05,28\nabc', 'El texto')).toThrow(
      'El texto: se leyó 1 noche, hasta la línea 1 («2030-01-05,28»), y hacen falta 3 como mínimo; líneas que no se pudieron leer: 1, la primera de ellas la línea 2 («abc»: sin fecha).',
    );
  });

  it('tells what a spot does where one of the two kinds of night gains nothing', () => {
    const none = { lowC: 0, centreC: 0, highC: 0 };
    const some = { lowC: 1, centreC: 1.5, highC: 2 };
    expect(said.spotDoes({ calm: none, windy: none }, 'C')).toBe('es tan frío como el terreno abierto');
    expect(said.spotDoes({ calm: some, windy: none }, 'C')).toBe(
      'suma aproximadamente +1,5\u00a0°C (1,0 a 2,0) en noches en calma y despejadas y nada en noches con viento',
    );
  });
});
