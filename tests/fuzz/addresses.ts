import fc from 'fast-check';

import { ALL_CHOICES } from '../../analysis/cover/cover-ids.ts';
import { WISH_LIMITS } from '../../analysis/answer/choose-wishes.ts';
import { CITRUS_TYPES, findType } from '../../analysis/tree/catalogue.ts';
import { readAddress, writeAddress } from '../../web/state/address.ts';
import {
  AGE_YEARS_MAX,
  AT_LEAST_MAX,
  CORNERS_MAX,
  HORIZON_YEARS_MAX,
  PINS_MAX,
  type Place,
} from '../../web/state/chosen.ts';
import { coverIdsOf, coverText } from '../../web/state/cover-choice.ts';
import { readPlantingText, START_AGE_MAX, writePlantingText } from '../../web/state/planting-text.ts';
import { foldQuery, unfoldQuery } from '../../web/state/short-address.ts';
import { readSheetText, SHEET_TYPES_MAX, writeSheetText } from '../../web/state/sheet-text.ts';
import { readWishesText, writeWishesText } from '../../web/views/choose/wishes-text.ts';
import { readAnswersText, writeAnswersText } from '../../web/views/desk/counter/answers-text.ts';
import { anyText, damaged, nastyText } from './damage.ts';
import { must, property, type ReaderProperty } from './reader-property.ts';

const KEYS = [
  ...[
    'pack',
    'station',
    'postcode',
    'at',
    'age',
    'condition',
    'fruit-load',
    'container',
    'not-hardened',
    'rootstock',
  ],
  ...[
    'level',
    'years',
    'type',
    'rootstocks',
    'unit',
    'lang',
    'map',
    'against',
    'at-least',
    'spot',
    'yard',
    'measured',
  ],
  ...[
    'cover',
    'life',
    'wishes',
    'sheet',
    'counter',
    'map-winters',
    'pin',
    'area',
    's',
    '__proto__',
    'toString',
    'x',
  ],
];
const SOUND = [
  '?pack=sallowmere&at=31.1,-42.25,30&age=3&container=yes&level=wood&type=meyer_lemon&unit=C&lang=es',
  '?postcode=SC+101&pin=at:31,-42&pin=station:ZZ1&area=31.1,-42_2s,0_0,-2s&cover=cloth-light,tied&life=2,early,gulf',
  '?station=ZZ1&years=30&wishes=eating,5,2,4,8&sheet=meyer_lemon.a4&counter=home-no,wall-yes&measured=c63_145_227_15&spot=yard:3,4',
];

const query = fc.oneof(
  damaged(fc.constantFrom(...SOUND)),
  fc
    .array(
      fc.tuple(
        fc.constantFrom(...KEYS),
        fc.oneof(anyText, fc.constantFrom('1', 'yes', '31,-42', 'at:31,-42')),
      ),
      { maxLength: 8 },
    )
    // As URLSearchParams writes them: half a letter of two can stand in no address.
    .map((pairs) => `?${new URLSearchParams(pairs as [string, string][])}`),
);

function checkPlace(place: Place): void {
  if (place.by === 'point')
    must(Math.abs(place.lat) <= 90 && Math.abs(place.lon) <= 180, JSON.stringify(place));
  if (place.by !== 'station' && place.elevationM !== undefined)
    must(place.elevationM >= -430 && place.elevationM <= 8849, JSON.stringify(place));
}

function checkQuery(search: string): void {
  const { chosen, ignored } = readAddress(search);
  if (chosen.place) checkPlace(chosen.place);
  for (const pin of chosen.pins ?? []) checkPlace(pin);
  must((chosen.pins?.length ?? 0) <= PINS_MAX, 'too many pins');
  must(
    chosen.area === undefined || (chosen.area.length >= 3 && chosen.area.length <= CORNERS_MAX),
    'an area of no shape',
  );
  for (const [value, most] of [
    [chosen.ageYears, AGE_YEARS_MAX],
    [chosen.years, HORIZON_YEARS_MAX],
    [chosen.atLeast, AT_LEAST_MAX],
  ])
    must(
      value === undefined || (Number.isInteger(value) && value >= 1 && value <= most!),
      `${value} of at most ${most}`,
    );
  for (const text of ignored) must(text.length < 400, `what was left out is told in ${text.length} letters`);
  // What was taken is written as it was taken; points are told to four decimals.
  const once = writeAddress(chosen);
  must(
    writeAddress(readAddress(once).chosen) === once,
    `${once} is read as ${writeAddress(readAddress(once).chosen)}`,
  );
  must(readAddress(once).ignored.length === 0, `${once}: ${readAddress(once).ignored.join(' ')}`);
}

const typeIds = fc.uniqueArray(fc.constantFrom(...CITRUS_TYPES.map(({ id }) => id)), {
  maxLength: SHEET_TYPES_MAX,
});

export const ADDRESSES: readonly ReaderProperty[] = [
  property('addresses: only choices there are, the rest told; read again as written', query, checkQuery),
  property('folded links: unfolded as they were folded', query, async (text) => {
    // As a browser writes it into its address.
    const url = new URL('http://localhost/');
    url.search = text;
    if (url.search === '') return;
    must((await unfoldQuery(await foldQuery(url.search))) === url.search, 'another query');
  }),
  property(
    'folded links: damaged ones stay as they are or make a short query, however they swell',
    fc.oneof(
      fc
        .constantFrom(...SOUND, `?yard=${'A'.repeat(12_000)}`, `?yard=${'A'.repeat(40_000)}`)
        .chain((search) => fc.tuple(fc.constant(search), damaged(fc.constant('x')))),
      fc.tuple(anyText, anyText),
    ),
    async ([search, junk]) => {
      const folded = await foldQuery(search);
      const at = 4 + (junk.length % Math.max(1, folded.length - 4));
      for (const one of [
        folded.slice(0, at) + folded.slice(at + 1),
        folded,
        `?s=${encodeURIComponent(junk.replace(/\p{Surrogate}/gu, '\ufffd'))}`,
      ]) {
        const plain = await unfoldQuery(one);
        must(plain === one || plain.length <= 16_001, `${plain.length} letters came out`);
        readAddress(plain);
      }
    },
  ),
  property(
    'sheet, covers, counter, life and wishes: only what there is, read again as written',
    fc.oneof(
      anyText,
      damaged(
        fc.constantFrom(
          'meyer_lemon,satsuma_owari.letter',
          'cloth-light,tied,lights',
          'home-no,wall-yes,young-no',
          '2,early,gulf',
          'eating,5,2,4,8',
        ),
      ),
      nastyText,
    ),
    (text) => {
      const sheet = readSheetText(text);
      must(
        sheet.types.length <= SHEET_TYPES_MAX && sheet.types.every((id) => findType(id)),
        'a type there is not',
      );
      const written = writeSheetText(sheet);
      must(JSON.stringify(readSheetText(written ?? null)) === JSON.stringify(sheet), 'another sheet');
      const covers = coverIdsOf(text);
      must(
        covers.every((id) => (ALL_CHOICES as readonly string[]).includes(id)),
        'a cover there is not',
      );
      must(JSON.stringify(coverIdsOf(coverText(covers) ?? null)) === JSON.stringify(covers), 'another cover');
      const { answers, problem } = readAnswersText(text);
      must(
        JSON.stringify(readAnswersText(writeAnswersText(answers) ?? null).answers) ===
          JSON.stringify(answers),
        'other answers',
      );
      must(problem === null || problem.length < 200, 'a long problem');
      const { planting } = readPlantingText(text, 'gulf');
      must(planting.startAgeYears >= 1 && planting.startAgeYears <= START_AGE_MAX, JSON.stringify(planting));
      must(
        JSON.stringify(readPlantingText(writePlantingText(planting, 'gulf') ?? null, 'gulf').planting) ===
          JSON.stringify(planting),
        'another planting',
      );
      const { wishes } = readWishesText(text);
      for (const wish of ['nightsToCover', 'lostCropsInTen', 'yearsToWait', 'livingInTen'] as const)
        must(
          wishes[wish] >= WISH_LIMITS[wish].least && wishes[wish] <= WISH_LIMITS[wish].most,
          `${wish} ${wishes[wish]}`,
        );
      must(
        JSON.stringify(readWishesText(writeWishesText(wishes) ?? null).wishes) === JSON.stringify(wishes),
        'other wishes',
      );
    },
  ),
  property(
    'sheets: any choice is read as it was written',
    fc.record({ types: typeIds, paper: fc.constantFrom('a4' as const, 'letter' as const, null) }),
    (sheet) => {
      must(
        JSON.stringify(readSheetText(writeSheetText(sheet) ?? null)) === JSON.stringify(sheet),
        'another sheet',
      );
    },
  ),
];
