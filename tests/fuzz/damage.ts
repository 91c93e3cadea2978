import fc from 'fast-check';

/** Texts that readers stumble over: no numbers, odd numbers, impossible dates, marks, markup, names of object fields. */
export const NASTY_TEXTS = [
  ...[
    '',
    ' ',
    '0',
    '-0',
    '-',
    '.',
    'NaN',
    'Infinity',
    '-Infinity',
    '1e999',
    '1e5',
    '0x10',
    '1_000',
    '+3',
    '- 3',
  ],
  ...[
    '99999999999999999999',
    '-99999',
    '-9999',
    '999.9',
    '12,5',
    '1.2.3',
    '١٢',
    '½',
    'null',
    'true',
    '[]',
    '{}',
  ],
  ...['2001-02-30', '31/12/2001', '12/31/2001', '0000-00-00', '9999-12-31', '24:61', '200102301', '2001-1'],
  ...[
    '"',
    '""',
    "'",
    '\u0000',
    '\ufeff',
    '\u2028',
    '\ud800',
    '\r',
    '\n',
    '\t',
    ';',
    ',',
    '|',
    '#',
    '..',
    '../..',
  ],
  ...[
    '=1+1',
    '@SUM(A1)',
    '<img src=x onerror=alert(1)>',
    '</script>',
    '&lt;',
    '%00',
    '%',
    '__proto__',
    'constructor',
  ],
  ...['toString', 'x'.repeat(300), '9'.repeat(400)],
] as const;

export const nastyText = fc.constantFrom(...NASTY_TEXTS);

/** Any short text, half of it of the kind above. */
export const anyText = fc.oneof(nastyText, fc.string({ unit: 'binary', maxLength: 40 }));

/** Figures just beyond what a coordinate, a height, an age or a temperature can be, and far beyond. */
const beyond = fc.constantFrom(
  '91',
  '-90.5',
  '181',
  '-180,5',
  '9001',
  '-501',
  '31',
  '-1',
  '61,5',
  '-9999',
  '1e5',
);

type Change = (text: string) => string;

/** One change to a text: a piece taken out, put in, replaced, a line doubled, moved or lost, the end cut off. */
const change: fc.Arbitrary<Change> = fc
  .record({
    how: fc.constantFrom(
      'cut out',
      'put in',
      'cell',
      'cell',
      'cell',
      'double line',
      'drop line',
      'swap lines',
      'end',
    ),
    at: fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }),
    other: fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }),
    length: fc.nat(12),
    text: fc.oneof(nastyText, beyond),
  })
  .map(({ how, at, other, length, text: put }): Change => (text) => {
    const place = Math.floor(at * text.length);
    if (how === 'cut out') return text.slice(0, place) + text.slice(place + length);
    if (how === 'put in') return text.slice(0, place) + put + text.slice(place);
    if (how === 'end') return text.slice(0, place);
    if (how === 'cell') {
      const cells = text.split(/([,;\t\n ])/);
      cells[Math.floor(at * Math.ceil(cells.length / 2)) * 2] = put;
      return cells.join('');
    }
    const lines = text.split('\n');
    const [i, j] = [at, other].map((share) => Math.floor(share * lines.length));
    if (how === 'double line') lines.splice(i, 0, lines[i]);
    else if (how === 'drop line') lines.splice(i, 1);
    else [lines[i], lines[j]] = [lines[j], lines[i]];
    return lines.join('\n');
  });

/** A text with one to four changes. */
export function damaged(text: fc.Arbitrary<string>): fc.Arbitrary<string> {
  return fc
    .tuple(text, fc.array(change, { minLength: 1, maxLength: 4 }))
    .map(([whole, changes]) => changes.reduce((broken, one) => one(broken), whole));
}

/** Bytes with some of them turned, cut or added. */
export function damagedBytes(bytes: fc.Arbitrary<Uint8Array>): fc.Arbitrary<Uint8Array> {
  const share = fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true });
  const turns = fc.array(fc.tuple(share, fc.integer({ min: 1, max: 255 })), { maxLength: 4 });
  const keep = fc.oneof(fc.constant(1), share);
  return fc.tuple(bytes, turns, keep, fc.uint8Array({ maxLength: 4 })).map(([whole, at, kept, more]) => {
    const broken = Uint8Array.of(...whole.subarray(0, Math.ceil(kept * whole.length)), ...more);
    for (const [where, by] of at) if (broken.length > 0) broken[Math.floor(where * broken.length)] ^= by;
    return broken;
  });
}

/** What may stand anywhere in JSON, mostly where something else is due. */
const strangeValue: fc.Arbitrary<unknown> = fc.oneof(
  nastyText,
  fc.constantFrom<unknown>(
    null,
    true,
    false,
    0,
    -1,
    1.5,
    1e308,
    -1e308,
    5e-324,
    1e21,
    91,
    181,
    [],
    {},
    [null],
    [[]],
  ),
  fc.constantFrom<unknown>({ length: 3 }, { a: { b: null } }, [1, 'two'], ['\ud800']),
);

/** A value of JSON in which one to three things are replaced, taken out or added. */
export function damagedJson(sound: unknown): fc.Arbitrary<unknown> {
  const change = fc.record({
    picks: fc.array(fc.nat(1000), { minLength: 1, maxLength: 6 }),
    how: fc.constantFrom('replace', 'replace', 'remove', 'add'),
    put: strangeValue,
    key: nastyText,
  });
  return fc.array(change, { minLength: 1, maxLength: 3 }).map((changes) => {
    let root = structuredClone(sound);
    for (const { picks, how, put: value, key } of changes) {
      // A copy: what is put in may be changed next.
      const put = structuredClone(value);
      let holder = root as Record<string, unknown>;
      let name: string | null = null;
      for (const pick of picks) {
        const inside = (name === null ? root : holder[name]) as Record<string, unknown> | null;
        if (typeof inside !== 'object' || inside === null || Object.keys(inside).length === 0) break;
        holder = inside;
        name = Object.keys(inside)[pick % Object.keys(inside).length];
      }
      if (name === null) root = put;
      else if (how === 'replace') holder[name] = put;
      else if (how === 'remove') delete holder[name];
      else if (Array.isArray(holder)) holder.push(put);
      // As JSON has it: a field of its own, even `__proto__`.
      else
        Object.defineProperty(holder, key, {
          value: put,
          enumerable: true,
          configurable: true,
          writable: true,
        });
    }
    return root;
  });
}

/** The same as text. */
export const damagedJsonText = (value: unknown): fc.Arbitrary<string> =>
  fc.oneof(
    damagedJson(value).map((broken) => JSON.stringify(broken) ?? ''),
    damaged(fc.constant(JSON.stringify(value))),
  );
