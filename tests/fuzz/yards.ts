import { isDeepStrictEqual } from 'node:util';

import fc from 'fast-check';

import { checkYard } from '../../analysis/spot/check-yard.ts';
import { MEASURED_MAX_C, readMeasuredText, writeMeasuredText } from '../../analysis/spot/measured-text.ts';
import { READY_YARDS } from '../../analysis/spot/ready-yards.ts';
import { readReadings } from '../../analysis/spot/thermometer/read-readings.ts';
import { readYardFile, yardFileText } from '../../analysis/spot/yard-file.ts';
import { readYardText, writeYardText } from '../../analysis/spot/yard-text.ts';
import { anyYard } from '../analysis/spot/any-yard.ts';
import { anyText, damaged, damagedJsonText } from './damage.ts';
import { must, property, readOrRefused, type ReaderProperty } from './reader-property.ts';

const yards = READY_YARDS.map(({ yard }) => yard);
const letters = fc.string({ unit: fc.constantFrom(...'bwcplgkdrTSBO.AAz09_-%é '), maxLength: 60 });

const DIARIES = [
  'Date,Low\n2024-01-05,28.4\n2024-01-06,30.1\n2024-01-07,25\n2024-01-09,31.5\n',
  'fecha;mín;máx\n05/01/2024;-2,4;12\n16/01/2024;0,1;9\n17/01/2024;-1;8\n',
  'time\ttemp °C\n2024-01-05 18:00\t4.1\n2024-01-05 23:30\t-1.2\n2024-01-06 05:00\t-2.5\n2024-01-07 05:00\t1\n2024-01-08 05:00\t2\n',
  'Jan 5 2024 28\nJan 6 2024 30\nJan 7 2024 25 F\n',
];

const degrees = fc.integer({ min: -MEASURED_MAX_C * 100, max: MEASURED_MAX_C * 100 });
const kind = fc
  .tuple(fc.tuple(degrees, degrees, degrees), fc.integer({ min: 1, max: 9999 }))
  .map(([ends, nights]) => {
    const [low, centre, high] = [...ends].sort((a, b) => a - b);
    return { spread: { lowC: low / 100, centreC: centre / 100, highC: high / 100 }, nights };
  });
const measured = fc
  .record({ calm: fc.option(kind), windy: fc.option(kind) })
  .filter(({ calm, windy }) => calm !== null || windy !== null);

export const YARDS: readonly ReaderProperty[] = [
  property(
    'yard files: a changed file is a yard that can be reckoned with or one sentence',
    fc.oneof(
      {
        weight: 6,
        arbitrary: fc.constantFrom(...yards).chain((yard) => damagedJsonText({ schema: 1, ...yard })),
      },
      anyText,
    ),
    (text) => {
      const yard = readOrRefused(() => readYardFile(text, 'yard.json'));
      if (!yard) return;
      checkYard(yard);
      must(
        JSON.stringify(readYardFile(yardFileText(yard), 'again')) === JSON.stringify(yard),
        'it is not read again as it is written',
      );
    },
  ),
  property('yard files: any yard is read as it was written', anyYard, (yard) => {
    const plain: unknown = JSON.parse(JSON.stringify(yard));
    must(isDeepStrictEqual(readYardFile(yardFileText(yard), 'yard.json'), plain), 'another yard');
  }),
  property(
    'yard texts: garbage is a yard that can be reckoned with or one sentence',
    fc.oneof(
      damaged(anyYard.map(writeYardText)),
      letters,
      anyText,
      letters.map((rest) => `1KAHgzk${rest}`),
    ),
    (text) => {
      const yard = readOrRefused(() => readYardText(text));
      if (!yard) return;
      checkYard(yard);
      must(
        writeYardText(readYardText(writeYardText(yard))) === writeYardText(yard),
        'it is not read again as it is written',
      );
    },
  ),
  property('measured texts: what is written is read again', measured, (offset) => {
    const again = readMeasuredText(writeMeasuredText(offset));
    must(JSON.stringify(again) === JSON.stringify(offset), JSON.stringify(again));
  }),
  property(
    'measured texts: a changed one is within the limits or one sentence',
    fc.oneof(damaged(measured.map(writeMeasuredText)), anyText),
    (text) => {
      const offset = readOrRefused(() => readMeasuredText(text));
      for (const one of [offset?.calm, offset?.windy]) {
        if (!one) continue;
        const { lowC, centreC, highC } = one.spread;
        must(
          -MEASURED_MAX_C <= lowC && lowC <= centreC && centreC <= highC && highC <= MEASURED_MAX_C,
          JSON.stringify(one),
        );
        must(Number.isInteger(one.nights) && one.nights >= 1 && one.nights <= 9999, `${one.nights} nights`);
      }
    },
  ),
  property(
    'readings: each is a night of its own with a temperature there can be',
    fc.oneof({ weight: 6, arbitrary: damaged(fc.constantFrom(...DIARIES)) }, anyText),
    (text) => {
      const read = readOrRefused(() => readReadings(text, 'diary.csv'));
      if (!read) return;
      must(read.readings.length >= 3, `${read.readings.length} nights`);
      let before = -Infinity;
      for (const { day, minimum } of read.readings) {
        must(Number.isInteger(day) && day > before, 'nights out of order');
        must(minimum >= -90 && minimum <= 140, `a minimum of ${minimum}`);
        before = day;
      }
      must(
        read.skipped.every(({ line, reason }) => line >= 1 && reason !== ''),
        'a line left out without a reason',
      );
    },
  ),
];
