import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { openText } from '../../../analysis/read/open-text.ts';
import { bytesOf, gzipOf, refusal, streamOf } from './reading.ts';

async function textOf(bytes: Uint8Array, size?: number): Promise<string> {
  let text = '';
  for await (const chunk of openText(streamOf(bytes, size), 'f.csv')) text += chunk;
  return text;
}

describe('text of a stream', () => {
  it('is UTF-8 without its byte order mark, plain or gzipped, however the bytes are cut', async () => {
    const text = 'día,año\n2001-01-01,½ °C\n';
    for (let size = 1; size <= 12; size += 1) {
      expect(await textOf(bytesOf(text), size)).toBe(text);
      expect(await textOf(bytesOf(`\ufeff${text}`), size)).toBe(text);
      expect(await textOf(gzipOf(`\ufeff${text}`), size)).toBe(text);
    }
  });

  it('takes bytes that are not UTF-8 as Latin-1', async () => {
    const latin = Uint8Array.from([0x4c, 0x45, 0xd3, 0x4e, 0x0a]);
    for (const size of [1, 2, 5]) expect(await textOf(latin, size)).toBe('LEÓN\n');
  });

  it('is the same for any bytes however they are cut', async () => {
    const bytes = fc
      .uint8Array({ minLength: 4, maxLength: 40 })
      .map((a) => a.map((b) => (b < 32 ? b + 32 : b)));
    await fc.assert(
      fc.asyncProperty(bytes, fc.integer({ min: 1, max: 7 }), async (all, size) => {
        fc.pre(!(all[0] === 0x50 && all[1] === 0x4b) && !(all[0]! >= 0xfe && all[1]! >= 0xfe));
        expect(await textOf(all, size)).toBe(await textOf(all));
      }),
      { numRuns: 200 },
    );
  });

  it('refuses what is no text, in one sentence', async () => {
    expect(await refusal(textOf(new Uint8Array(0)))).toBe('f.csv is empty.');
    expect(await refusal(textOf(gzipOf('')))).toBe('f.csv is empty.');
    expect(await refusal(textOf(Uint8Array.from([0x61, 0x62, 0, 1, 2])))).toBe(
      'f.csv is not text: byte 3 has the value 0.',
    );
    expect(await refusal(textOf(Uint8Array.from([0xff, 0xfe, 0x61, 0])))).toBe(
      'f.csv is UTF-16 text: save it as UTF-8.',
    );
    expect(await refusal(textOf(Uint8Array.from([0x50, 0x4b, 3, 4, 5])))).toBe(
      'f.csv is a zip archive: unpack it and give the files inside.',
    );
  });

  it('refuses a gzip that is cut anywhere, or damaged', async () => {
    const whole = gzipOf(Array.from({ length: 400 }, (_, i) => `${i * 7919}`).join('\n'));
    for (const cut of [1, 4, 8, 60, whole.length - 4]) {
      const message = await refusal(textOf(whole.slice(0, whole.length - cut), 64));
      expect(message).toBe('f.csv is a gzip file that is cut short or damaged.');
    }
    const damaged = whole.slice();
    damaged[30]! ^= 0xff;
    expect(await refusal(textOf(damaged))).toBe('f.csv is a gzip file that is cut short or damaged.');
  });

  it('passes on the failure of the source itself', async () => {
    const broken = new ReadableStream<Uint8Array>({
      pull(controller) {
        controller.error(new Error('disk gone'));
      },
    });
    await expect(openText(broken, 'f').next()).rejects.toThrow('disk gone');
  });
});
