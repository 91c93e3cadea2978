import { describe, expect, it } from 'vitest';

import { checkBase, keepBase, loadArchives, startBase } from '../../../web/archive/archive-base.ts';
import { memoryStorage } from '../state/memory-storage.ts';

const PUBLIC = 'https://archive.example/';
const MIRROR = 'https://mirror.example/ghcn/';
const ALLOWED = [PUBLIC, MIRROR];

describe('the base address', () => {
  it.each([
    [PUBLIC, PUBLIC],
    [' https://archive.example ', PUBLIC],
    ['https://mirror.example/ghcn', MIRROR],
    ['https://mirror.example/ghcn/2024?x#y', 'https://mirror.example/ghcn/2024/'],
  ])('%j is taken as %s', (typed, base) => expect(checkBase(typed, ALLOWED)).toBe(base));

  it.each([
    'https://other.example/',
    'http://archive.example/',
    'https://mirror.example/other/',
    'https://archive.example.other.example/',
    'https://mirror.example/ghcn/../',
  ])('%s is refused with the place where it must be allowed', (typed) => {
    expect(() => checkBase(typed, ALLOWED)).toThrow(
      /^This site doesn’t allow .*: whoever runs it must add .* ARCHIVES/,
    );
  });

  it.each(['', 'archive.example', 'ftp://archive.example/', 'javascript:alert(1)'])(
    '%j is no address',
    (typed) => {
      expect(() => checkBase(typed, ALLOWED)).toThrow(/is no address: it must begin with/);
    },
  );

  it('is remembered while the site allows it', () => {
    const storage = memoryStorage();
    expect(startBase(ALLOWED, storage)).toBe(PUBLIC);
    keepBase(MIRROR, ALLOWED, storage);
    expect(startBase(ALLOWED, storage)).toBe(MIRROR);
    expect(startBase([PUBLIC], storage)).toBe(PUBLIC);
    expect(startBase([], storage)).toBeNull();
    keepBase(PUBLIC, ALLOWED, storage);
    expect(startBase(ALLOWED, storage)).toBe(PUBLIC);
    expect(startBase(ALLOWED, null)).toBe(PUBLIC);
  });
});

describe('site.json', () => {
  const load = (text: string, status = 200) =>
    loadArchives('https://site.example/tool/', async (url) => {
      expect(url).toBe('https://site.example/tool/site.json');
      return new Response(text, { status });
    });

  it('lists absolute addresses, or ones of the site itself', async () => {
    expect(await load('{"archives":["https://archive.example","mirror/",7]}')).toEqual([
      PUBLIC,
      'https://site.example/tool/mirror/',
    ]);
  });

  it.each([
    ['', 404],
    ['<html>', 200],
    ['{}', 200],
    ['null', 200],
  ])('%j with %i is told of in one sentence', async (text, status) => {
    await expect(load(text, status)).rejects.toThrow(/^site\.json/);
  });
});
