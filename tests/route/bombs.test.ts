import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { readGpx } from '../../src/route/gpx.ts';

const POINT = '<trkpt lat="1" lon="2"/>';

function gpx(inside: string, before = ''): Uint8Array {
  const text = `${before}<gpx version="1.1" creator="t" xmlns="http://www.topografix.com/GPX/1/1">${inside}</gpx>`;
  return new TextEncoder().encode(text);
}

function track(inside: string): string {
  return `<trk><name>kept</name><trkseg><trkpt lat="1" lon="2.1"/>${POINT}${inside}</trkseg></trk>`;
}

describe('entities', () => {
  const levels = Array.from({ length: 9 }, (_, i) => `<!ENTITY l${i + 1} "${`&l${i};`.repeat(10)}">`).join(
    '',
  );
  test.each([
    ['that unfold to a thousand million', `<!DOCTYPE gpx [<!ENTITY l0 "ha">${levels}]>`, '&l9;'],
    [
      'that unfold to a large one many times',
      `<!DOCTYPE gpx [<!ENTITY a "${'x'.repeat(50_000)}">]>`,
      '&a;'.repeat(50_000),
    ],
    ['that name a file', '<!DOCTYPE gpx [<!ENTITY e SYSTEM "file:///etc/passwd">]>', '&e;'],
    ['that name an address', '<!DOCTYPE gpx SYSTEM "https://elsewhere.example/gpx.dtd">', '&e;'],
    [
      'of the document type itself',
      '<!DOCTYPE gpx [<!ENTITY % p SYSTEM "https://elsewhere.example/"> %p;]>',
      '',
    ],
  ])('%s: the file is refused', async (_, doctype, use) => {
    const { value, problems } = await readGpx(
      gpx(`<metadata><name>${use}</name></metadata>${track('')}`, doctype),
    );
    expect(value).toBeNull();
    expect(problems.map(({ what }) => what).join()).toContain('document type');
  });

  test('that nothing declares stay as they are written', async () => {
    const { value, problems } = await readGpx(gpx(track('').replace('kept', '&l9;&lt;&#60;')));
    expect(value!.tracks[0].name).toBe('&l9;<<');
    expect(problems.some(({ what }) => what.includes('entity'))).toBe(true);
  });
});

describe('gzip', () => {
  test('that unfolds a thousandfold is stopped long before it is unpacked, and what came before is kept', async () => {
    const packed = gzipSync(gpx(track(`</trkseg></trk><!--${' '.repeat(60_000_000)}-->`)), { level: 9 });
    let read = 0;
    const { value, problems } = await readGpx(packed, {
      onProgress: (bytes) => (read = bytes),
      limits: { valueLength: 2 ** 30 },
    });
    expect(problems.map(({ what }) => what).join()).toContain('grows more than 200 times');
    expect(read).toBeLessThan(packed.length / 2);
    expect(value!.tracks[0].name).toBe('kept');
  });

  test('is unpacked once: what is packed in it is no GPX', async () => {
    const { value, problems } = await readGpx(gzipSync(gzipSync(gpx(track('')))));
    expect(value).toBeNull();
    expect(problems).not.toEqual([]);
  });

  test('is bounded in what it unpacks to, however well it is filled', async () => {
    const points = Array.from({ length: 5_000 }, (_, i) => `<trkpt lat="1" lon="${Math.sin(i)}"/>`).join('');
    const { problems } = await readGpx(gzipSync(gpx(track(points))), { limits: { decodedBytes: 100_000 } });
    expect(problems.map(({ what }) => what).join()).toContain('larger than');
  });
});

describe('shapes', () => {
  test.each([
    ['elements in one another', `<extensions>${'<a>'.repeat(20_000)}`, 'inside one another'],
    [
      'an attribute of 9 million characters',
      `<trkpt lat="1" lon="2" x="${'x'.repeat(9_000_000)}"/>`,
      'longer than',
    ],
    ['a name of an element of 9 million characters', `<${'x'.repeat(9_000_000)}/>`, 'longer than'],
    ['a comment of 9 million characters', `<!--${'x'.repeat(9_000_000)}-->`, 'longer than'],
    [
      'character data of 9 million characters',
      `<extensions><![CDATA[${'x'.repeat(9_000_000)}]]></extensions>`,
      'longer than',
    ],
  ])('%s: stopped, and what came before is kept', async (_, inside, says) => {
    const { value, problems } = await readGpx(gpx(track(inside)));
    expect(problems.map(({ what }) => what).join()).toContain(says);
    expect(value!.tracks[0]).toMatchObject({ name: 'kept', length: 2 });
  });

  test('twenty thousand attributes are read or refused, and nothing is named by them', async () => {
    const many = Array.from({ length: 20_000 }, (_, i) => `a${i}="1"`).join(' ');
    const { value } = await readGpx(
      gpx(track(`<trkpt lat="1" lon="3" __proto__="x" constructor="y" ${many}/>`)),
    );
    expect(value!.tracks[0]).toHaveLength(3);
    expect(({} as Record<string, unknown>).x).toBeUndefined();
  });

  test.each(['1e999', '-1e999', 'Infinity', 'NaN', '0x7f', '1'.repeat(100_000), `0.${'0'.repeat(100_000)}1`])(
    'an elevation of %.20s is a height or unknown',
    async (ele) => {
      const { value } = await readGpx(gpx(track(`<trkpt lat="1" lon="2.2"><ele>${ele}</ele></trkpt>`)));
      const [, , elevationM] = value!.tracks[0].elevationM;
      expect(Number.isNaN(elevationM) || Math.abs(elevationM) < 9000).toBe(true);
    },
  );
});
