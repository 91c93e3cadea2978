import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { gunzipSync } from 'node:zlib';
import { headerNames as cellsOf } from '../../analysis/read/recognise.ts';
import { checkPlaces } from '../../analysis/records/check-pack.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import type { PackPlaces } from '../../analysis/records/pack.ts';

/** Columns of the layout that are always there; the twelfth, accuracy, may be missing. */
const GEONAMES_COLUMNS = 11;

type Postcode = PackPlaces['postcodes'][number];

/**
 * Reads `--places`: JSON in the shape of a pack's `places.json`, CSV with the header `code,name,lat,lon`, or a postal file
 * in GeoNames' tab-separated layout (country, code, name, three pairs of administrative name and code, latitude, longitude and
 * perhaps accuracy). Any of them may be gzipped. Only places inside the box are kept.
 * @throws InputError naming file, line and value
 */
export async function readPlaces(
  file: string,
  [west, south, east, north]: readonly [number, number, number, number],
): Promise<PackPlaces> {
  const name = path.basename(file);
  const places = placesIn(await readText(file, name), name);
  const inside = ({ lat, lon }: { lat: number; lon: number }) =>
    lat >= south && lat <= north && lon >= west && lon <= east;
  return { postcodes: places.postcodes.filter(inside), towns: places.towns.filter(inside) };
}

/**
 * The places of a file's text, wherever they lie.
 * @throws InputError naming file, line and value
 */
export function placesIn(text: string, name: string): PackPlaces {
  const plain = text.replace(/^\ufeff/, '');
  if (plain.trimStart().startsWith('{')) return checkPlaces(parsed(plain, name), name);
  const postcodes = plain.includes('\t') ? fromGeoNames(plain, name) : fromCsv(plain, name);
  return { postcodes, towns: [] };
}

async function readText(file: string, name: string): Promise<string> {
  const bytes = await readFile(file);
  if (bytes[0] !== 0x1f || bytes[1] !== 0x8b) return bytes.toString('utf8');
  try {
    return gunzipSync(bytes).toString('utf8');
  } catch {
    throw new InputError(`${name} is cut off or damaged: its gzip stream breaks off`);
  }
}

function parsed(text: string, file: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw new InputError(`${file} is not valid JSON`);
  }
}

function fromCsv(text: string, file: string): Postcode[] {
  const [header = [], ...rows] = text.split(/\r?\n/).map((line) => cellsOf(line, ','));
  const names = header.map((cell) => cell.trim().toLowerCase());
  const column = (wanted: string) => {
    const at = names.indexOf(wanted);
    if (at < 0)
      throw new InputError(`${file}, line 1: column "${wanted}" is missing (code,name,lat,lon are needed)`);
    return at;
  };
  const [code, name, lat, lon] = ['code', 'name', 'lat', 'lon'].map(column);
  return rows.flatMap((row, i) =>
    row.every((cell) => cell === '') ? [] : [postcode(row[code], row[name], row[lat], row[lon], file, i + 2)],
  );
}

function fromGeoNames(text: string, file: string): Postcode[] {
  const lines = text.split(/\r?\n/);
  return lines.flatMap((line, i) => {
    if (line.trim() === '') return [];
    const cells = line.split('\t');
    if (cells.length < GEONAMES_COLUMNS) {
      throw new InputError(
        `${file}, line ${i + 1}: ${cells.length} columns, but GeoNames' postal layout has ${GEONAMES_COLUMNS} or 12`,
      );
    }
    return [postcode(cells[1], cells[2], cells[9], cells[10], file, i + 1)];
  });
}

function postcode(
  code: string | undefined,
  name: string | undefined,
  latText: string | undefined,
  lonText: string | undefined,
  file: string,
  line: number,
): Postcode {
  const [lat, lon] = [latText, lonText].map((text) => (text?.trim() ? Number(text) : NaN));
  if (!code?.trim()) throw new InputError(`${file}, line ${line}: the postcode is empty`);
  if (!(Math.abs(lat) <= 90))
    throw new InputError(`${file}, line ${line}: latitude "${latText ?? ''}" is outside -90 to 90`);
  if (!(Math.abs(lon) <= 180)) {
    throw new InputError(`${file}, line ${line}: longitude "${lonText ?? ''}" is outside -180 to 180`);
  }
  return { code: code.trim(), name: name?.trim() ?? '', lat, lon };
}
