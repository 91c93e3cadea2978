import { readRecords } from '../../analysis/read/read-records.ts';
import { civilDate } from '../../analysis/units/calendar.ts';
import { medianMs, type BenchRow } from './bench-row.ts';
import { inventedSeries } from './invented-record.ts';

/** Text of station files to raw readings, in the archive's two main formats. */
export async function benchBuild(): Promise<BenchRow[]> {
  const series = inventedSeries(60, 3);
  const files = [
    { name: 'ZZ000000001.dly', text: dlyText(series) },
    { name: 'ZZ000000001.csv', text: longText(series) },
  ];
  const rows: BenchRow[] = [];
  for (const { name, text } of files) {
    const bytes = new TextEncoder().encode(text);
    const ms = await medianMs(() => readRecords(streamOf(bytes), { fileName: name }));
    rows.push({
      task: `text to readings, ${name.endsWith('dly') ? '.dly' : 'long CSV'}`,
      measured: bytes.length / 1e3 / ms,
      unit: 'MB/s',
      budget: { value: 60, most: false },
      ratio: null,
      note: `${(bytes.length / 1e6).toFixed(1)} MB, one thread`,
    });
  }
  return rows;
}

function streamOf(bytes: Uint8Array): ReadableStream<Uint8Array> {
  const size = 65_536;
  let at = 0;
  return new ReadableStream({
    pull(controller) {
      if (at >= bytes.length) return controller.close();
      controller.enqueue(bytes.subarray(at, (at += size)));
    },
  });
}

type Series = ReturnType<typeof inventedSeries>;

/** The archive's five core elements, of which two are temperatures. */
function dlyText({ firstDay, tminC, tmaxC }: Series): string {
  const months = new Map<string, string[]>();
  for (let i = 0; i < tminC.length; i++) {
    const { year, month, day } = civilDate(firstDay + i);
    for (const [element, value] of [
      ['PRCP', 0],
      ['SNOW', 0],
      ['SNWD', 0],
      ['TMAX', tmaxC[i]],
      ['TMIN', tminC[i]],
    ] as const) {
      const key = `ZZ000000001${year}${String(month).padStart(2, '0')}${element}`;
      const cells = months.get(key) ?? new Array<string>(31).fill('-9999   ');
      if (!Number.isNaN(value)) cells[day - 1] = `${String(Math.round(value * 10)).padStart(5)}  0`;
      months.set(key, cells);
    }
  }
  return [...months].map(([key, cells]) => `${key}${cells.join('')}\n`).join('');
}

function longText({ firstDay, tminC, tmaxC }: Series): string {
  const rows = ['ID,DATE,ELEMENT,DATA_VALUE,M_FLAG,Q_FLAG,S_FLAG,OBS_TIME'];
  for (let i = 0; i < tminC.length; i++) {
    const { year, month, day } = civilDate(firstDay + i);
    const date = year * 10_000 + month * 100 + day;
    for (const [element, value] of [
      ['TMAX', tmaxC[i]],
      ['TMIN', tminC[i]],
    ] as const) {
      if (!Number.isNaN(value))
        rows.push(`ZZ000000001,${date},${element},${Math.round(value * 10)},,,0,2400`);
    }
  }
  return `${rows.join('\n')}\n`;
}
