import { XMLParser } from 'fast-xml-parser';
import { readFileSync } from 'node:fs';
import { SaxesParser } from 'saxes';
import { readGpx } from '../../src/route/gpx.ts';

/** What a way of reading says it found, to check that it read at all. */
type Reader = (bytes: Uint8Array) => Promise<number> | number;

const STEP_BYTES = 8_192;

const READERS: Record<string, Reader> = {
  async ours(bytes) {
    const { value } = await readGpx(bytes);
    return value?.tracks[0]?.length ?? 0;
  },

  /** Decoding and parsing alone, in the same steps, to handlers that only count. */
  saxes(bytes) {
    const decoder = new TextDecoder();
    const parser = new SaxesParser();
    let points = 0;
    let texts = 0;
    parser.on('opentag', ({ name }) => {
      if (name === 'trkpt') points++;
    });
    parser.on('text', () => texts++);
    parser.on('closetag', () => texts++);
    for (let at = 0; at < bytes.length; at += STEP_BYTES) {
      parser.write(decoder.decode(bytes.subarray(at, at + STEP_BYTES), { stream: true }));
    }
    parser.close();
    return points;
  },

  'fast-xml-parser'(bytes) {
    const parser = new XMLParser({ ignoreAttributes: false });
    const { gpx } = parser.parse(new TextDecoder().decode(bytes)) as {
      gpx: { trk: { trkseg: { trkpt: unknown[] } } };
    };
    return gpx.trk.trkseg.trkpt.length;
  },

  /** In the document model that gpxparser brings to Node. */
  async togeojson(bytes) {
    await import('gpxparser');
    const { gpx } = await import('@tmcw/togeojson');
    const dom = new window.DOMParser().parseFromString(new TextDecoder().decode(bytes), 'text/xml');
    const geometry = gpx(dom).features[0]?.geometry;
    return geometry?.type === 'LineString' ? geometry.coordinates.length : 0;
  },

  /** As fast as one can go: knows the layout of the file, checks nothing. */
  scan(bytes) {
    const columns = [0, 1, 2, 3].map(() => new Float64Array(bytes.length / 60));
    let points = 0;
    for (let at = bytes.indexOf(60); at >= 0; at = bytes.indexOf(60, at + 1)) {
      if (bytes[at + 1] !== 116 || bytes[at + 2] !== 114 || bytes[at + 3] !== 107 || bytes[at + 4] !== 112)
        continue;
      let i = at + 7;
      for (let column = 0; column < 3; column++) {
        while (bytes[i] < 48 || bytes[i] > 57) i++;
        const negative = bytes[i - 1] === 45;
        let value = 0;
        let scale = 0;
        for (; (bytes[i] >= 48 && bytes[i] <= 57) || bytes[i] === 46; i++) {
          if (bytes[i] === 46) scale = 1;
          else {
            value = value * 10 + bytes[i] - 48;
            scale *= 10;
          }
        }
        columns[column][points] = (negative ? -value : value) / (scale || 1);
      }
      while (bytes[i] !== 62 || bytes[i - 1] !== 101 || bytes[i - 5] === 47) i++;
      const two = (k: number) => (bytes[i + k] - 48) * 10 + bytes[i + k + 1] - 48;
      columns[3][points] =
        Date.UTC(two(1) * 100 + two(3), two(6) - 1, two(9), two(12), two(15), two(18)) / 1000;
      points++;
      at = i;
    }
    return points;
  },
};

const [, , name, file] = process.argv;
const bytes = readFileSync(file);
globalThis.gc?.();
const before = process.memoryUsage().rss;
const start = performance.now();
const startCpu = process.cpuUsage();
const points = await READERS[name](bytes);
const cpu = process.cpuUsage(startCpu);
const ms = performance.now() - start;
const above = process.resourceUsage().maxRSS * 1024 - before;
process.stdout.write(
  JSON.stringify({ points, ms, cpuMs: (cpu.user + cpu.system) / 1e3, aboveMB: above / 1e6 }),
);
