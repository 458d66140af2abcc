import { gzipSync } from 'fflate';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { problemText } from '../../src/problem.ts';
import type { ReadOptions } from '../../src/route/gpx.ts';
import { readGpx } from '../../src/route/gpx.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const file = (name: string) => new Uint8Array(readFileSync(new URL(`in/${name}.gpx`, import.meta.url)));

/** What was read, with the problems as lines of text. */
async function read(input: string | Uint8Array | AsyncIterable<Uint8Array>, options?: ReadOptions) {
  const { value, problems } = await readGpx(typeof input === 'string' ? bytes(input) : input, options);
  return { value, tracks: value?.tracks ?? [], problems: problems.map(problemText) };
}

const ROOT = '<gpx version="1.1" creator="test">';
const points = (...all: string[]) => `${ROOT}<trk><name>T</name><trkseg>${all.join('')}</trkseg></trk></gpx>`;
const point = (lat: number, ele = 1) => `<trkpt lat="${lat}" lon="20"><ele>${ele}</ele></trkpt>`;
const TWO_POINTS = points(point(10), point(11));
const named = (name: string) => TWO_POINTS.replace('>T<', `>${name}<`);

describe('a plain recording', () => {
  it('is read whole, without complaint', async () => {
    const { value, tracks, problems } = await read(file('plain'));
    expect(problems).toEqual([]);
    expect(value?.name).toBe('Saddle road');
    expect(value?.waypoints).toEqual([
      { name: 'Gate', description: 'Leave as found', lng: -112.9812, lat: 37.20412, elevationM: 1631 },
    ]);
    const [track] = tracks;
    expect(track).toMatchObject({ name: 'Saddle to creek', description: '', kind: 'track', length: 7 });
    expect([...track.lat]).toEqual([37.20412, 37.20431, 37.20455, 37.20472, 37.20489, 37.20514, 37.20533]);
    expect([...track.elevationM]).toEqual([1631, 1630.2, 1628.9, 1627.4, 1625.8, 1624.1, 1623.5]);
    expect(track.timeS[0]).toBe(Date.parse('2024-05-11T07:00:00Z') / 1000);
    expect([...track.segmentStart]).toEqual([0]);
  });

  it('is the same in pieces of any size, packed or not', async () => {
    const whole = await readGpx(file('segments'));
    for (const content of [file('segments'), gzipSync(file('segments'))]) {
      for (const size of [1, 2, 3, 7, 64]) {
        expect(await readGpx(inPieces(content, size))).toEqual(whole);
      }
    }
  });

  it('of version 1.0 has its name in the root', async () => {
    const { value, tracks, problems } = await read(file('version-1-0'));
    expect(value?.name).toBe('Ridge loop');
    expect(value?.waypoints[0].description).toBe('Water all year');
    expect(tracks.map(({ kind, name, length }) => [kind, name, length])).toEqual([
      ['route', 'Plan', 2],
      ['track', 'As driven', 2],
    ]);
    expect(problems).toEqual([
      'warning: line 11, <rtept>: A point has no elevation. The slope is unknown where too few points have one.',
    ]);
  });

  it('may carry a prefix, and undeclared ones in its extensions', async () => {
    const { tracks, problems } = await read(file('prefixed'));
    expect(problems).toEqual([]);
    expect([...tracks[0].elevationM]).toEqual([910.5, 911]);
    expect(tracks[0].name).toBe('Prefixed');
  });

  it('may have exponents, signs, spaces, and line breaks inside tags', async () => {
    const { tracks, problems } = await read(file('exponents'));
    expect(problems).toEqual([]);
    expect([...tracks[0].lat]).toEqual([-1.5e-5, 1e-4, 1]);
    expect([...tracks[0].lng]).toEqual([25, 25.0001, 25.1]);
    expect([...tracks[0].elevationM]).toEqual([120, 0.5, -12]);
  });

  it('reports how far it has come, and can be cancelled', async () => {
    const seen: number[] = [];
    const content = bytes(points(...Array.from({ length: 5_000 }, (_, i) => point(i / 1000))));
    await readGpx(content, { onProgress: (bytesRead) => seen.push(bytesRead) });
    expect(seen.length).toBeGreaterThan(2);
    expect(seen.at(-1)).toBe(content.length);
    const stop = new AbortController();
    const cancelled = readGpx(content, { onProgress: () => stop.abort(), signal: stop.signal });
    await expect(cancelled).rejects.toThrow(/abort/i);
  });
});

describe('segments', () => {
  it('stay apart: a gap adds no distance, an empty segment leaves no trace', async () => {
    const [track] = (await read(file('segments'))).tracks;
    expect([...track.segmentStart]).toEqual([0, 2]);
    expect(track.distanceM[2]).toBe(track.distanceM[1]);
    expect(track.distanceM[4]).toBeCloseTo(300, -1);
  });

  it('take elevation and time only from children of the point itself, and nothing from comments', async () => {
    const { tracks } = await read(file('segments'));
    expect(tracks).toHaveLength(1);
    expect([...tracks[0].elevationM]).toEqual([500, 510, 600, 590, 580]);
    expect(tracks[0].timeS.every(Number.isNaN)).toBe(true);
  });

  it('cross the 180th meridian by the short way', async () => {
    const { tracks, problems } = await read(file('antimeridian'));
    expect([...tracks[0].lng]).toEqual([179.999, -180, -179.999]);
    expect(tracks[0].distanceM[2]).toBeCloseTo(213.2, 0);
    expect(problems).toEqual([
      'warning: line 4, <trkpt>: A longitude is given as +180 degrees. Read as -180, the same meridian.',
    ]);
  });
});

describe('names', () => {
  it('are decoded to plain text, CDATA as it stands', async () => {
    const [track] = (await read(file('segments'))).tracks;
    expect(track.name).toBe('Rock & Roll <A> – up');
    expect(track.description).toBe(
      'Two hours, dry.\nLow range from the ford.\nLeft at the <b>big</b> rock & on',
    );
  });

  it('keep a bare ampersand, and all that follows it', async () => {
    for (const name of ['Rock & Roll', 'R&R', 'R&;R', '& a &b; c &', `&${'a'.repeat(500)};`]) {
      const { tracks, problems } = await read(named(name));
      expect(tracks[0]).toMatchObject({ name, length: 2 });
      expect(problems[0]).toMatch(/^warning: line 1, <name>: A bare "&"|entity that XML does not know/);
    }
  });

  it('keep an unknown entity as it is written', async () => {
    const { tracks, problems } = await read(named('A&nbsp;B'));
    expect(tracks[0]).toMatchObject({ name: 'A&nbsp;B', length: 2 });
    expect(problems).toEqual([
      'warning: line 1: An entity that XML does not know stands in a text. Left as written.',
    ]);
  });

  it('are cut where they are absurdly long', async () => {
    const { tracks, problems } = await read(named('x'.repeat(2_000_000)));
    expect(tracks[0].name).toHaveLength(100_000);
    expect(problems).toEqual([
      'warning: line 1, <name>: A name or description is longer than 100,000 characters. The rest was cut off.',
    ]);
  });
});

describe('encodings', () => {
  const declared = (encoding: string) => `<?xml version="1.0" encoding="${encoding}"?>\n${named('Ä – ö')}`;
  const single = (text: string) => Uint8Array.from(text, (c) => (c === '–' ? 0x96 : c.charCodeAt(0)));
  const utf16 = (text: string, littleEndian: boolean) => {
    const view = new DataView(new ArrayBuffer(text.length * 2));
    for (let i = 0; i < text.length; i++) view.setUint16(i * 2, text.charCodeAt(i), littleEndian);
    return new Uint8Array(view.buffer);
  };

  it.each([
    ['UTF-8', bytes(declared('UTF-8'))],
    ['UTF-8 undeclared', bytes(named('Ä – ö'))],
    ['UTF-8 with a byte order mark', bytes(`\uFEFF${declared('UTF-8')}`)],
    ['UTF-8 whose mark contradicts the declaration', bytes(`\uFEFF${declared('ISO-8859-1')}`)],
    ['windows-1252', single(declared('windows-1252'))],
    ['UTF-16 LE with a mark', utf16(`\uFEFF${declared('UTF-16')}`, true)],
    ['UTF-16 BE with a mark', utf16(`\uFEFF${declared('UTF-16')}`, false)],
    ['UTF-16 LE without', utf16(declared('UTF-16'), true)],
    ['UTF-16 BE without', utf16(declared('UTF-16'), false)],
  ])('%s is read', async (_, content) => {
    const { tracks, problems } = await read(content);
    expect(tracks[0].name).toBe('Ä – ö');
    expect(problems).toEqual([]);
  });

  it('ISO-8859-1 is read', async () => {
    const { tracks } = await read(single(`<?xml version="1.0" encoding="iso-8859-1"?>${named('Größe')}`));
    expect(tracks[0].name).toBe('Größe');
  });

  it('that are wrong or unknown are said to be', async () => {
    expect((await read(bytes(declared('UTF-16')))).problems[0]).toMatch(
      /line 1: The file says its encoding is UTF-16/,
    );
    expect((await read(bytes(declared('klingon')))).problems[0]).toMatch(
      /The character encoding "klingon" is not known/,
    );
    expect((await read(single(named('Größe')))).problems[0]).toMatch(
      /<name>: Some letters of a text do not fit/,
    );
  });
});

describe('gzip', () => {
  it('is unpacked', async () => {
    expect((await read(gzipSync(file('plain')))).tracks[0].length).toBe(7);
  });

  it('that breaks off keeps the points before', async () => {
    const random = Array.from({ length: 20_000 }, (_, i) => point((i * 7919) % 90, (i * 104_729) % 1000));
    const packed = gzipSync(bytes(points(...random)));
    const { tracks, problems } = await read(packed.subarray(0, packed.length / 2));
    expect(tracks[0].length).toBeGreaterThan(5_000);
    expect(problems[0]).toMatch(/^error: .*The file ends before the recording does/);
  });

  it('that expands without end is stopped', async () => {
    const bomb = gzipSync(
      bytes(`${points(point(1), point(2)).replace('</gpx>', '')}${'<a/>'.repeat(10_000_000)}`),
    );
    const { tracks, problems } = await read(bomb, { limits: { gzipGraceBytes: 6_000_000 } });
    expect(tracks[0].length).toBe(2);
    expect(problems[0]).toMatch(/^error: .*Unpacked, the file grows more than 200 times/);
  });

  it('of another kind is named', async () => {
    expect((await read('PK\u0003\u0004rest')).problems[0]).toMatch(/This is a zip archive, not GPX/);
    expect((await read('BZh91AY')).problems[0]).toMatch(/This is a bzip2 archive, not GPX/);
  });
});

describe('what is not GPX', () => {
  it.each([
    ['nothing', '', /^error: the file: The file is empty/],
    ['spaces', '  \n ', /no XML element was found/],
    ['a document type without end', `<!DOCTYPE ${'x'.repeat(10_000_000)}`, /no XML element was found/],
    ['prose', 'Dear club, the track is attached.', /no XML element was found/],
    ['a picture', new Uint8Array([0xff, 0xd8, 0xff, 0xe0, 0, 16, 74, 70, 73, 70, 0, 1]), /no XML element/],
    ['KML', '<kml xmlns="http://www.opengis.net/kml/2.2"><Document/></kml>', /it begins with <kml>/],
    ['a web page', '<!DOCTYPE html><html><body>Sign in</body></html>', /This is a web page/],
    ['a web page without a type', '<html><body>Sign in</body></html>', /This is a web page/],
    ['a gpx without points', `${ROOT}<trk><trkseg/></trk></gpx>`, /The file holds no usable point/],
  ])('%s gives null and says what it is', async (_, content, message) => {
    const { value, problems } = await read(content);
    expect(value).toBeNull();
    expect(problems[0]).toMatch(message);
  });

  it('a document type is refused, with all its entities', async () => {
    const entities = Array.from(
      { length: 9 },
      (_, i) => `<!ENTITY l${i + 1} "${`&l${i};`.repeat(10)}">`,
    ).join('');
    for (const type of [
      '<!DOCTYPE gpx>',
      '<!DOCTYPE gpx SYSTEM "file:///etc/passwd">',
      '<!DOCTYPE gpx [<!ENTITY height "12">]>',
      `<!DOCTYPE gpx [<!ENTITY l0 "lol">${entities}]>`,
      `${ROOT}<!DOCTYPE gpx>`,
    ]) {
      const { value, problems } = await read(type + named('&l9;').replace('>1<', '>&height;<'));
      expect(value).toBeNull();
      expect(problems).toEqual([
        'error: the file: The file declares a document type (DOCTYPE), which GPX never needs and which can carry ' +
          'harmful entities. Nothing was read. Export the file again, without the declaration.',
      ]);
    }
  });

  it('waypoints alone are worth reading', async () => {
    const { value, problems } = await read(`${ROOT}<wpt lat="1" lon="2"><name>Ford</name></wpt></gpx>`);
    expect(value?.waypoints[0]).toMatchObject({ name: 'Ford', elevationM: NaN });
    expect(problems[0]).toMatch(/^warning: the file: The file holds waypoints but no track/);
  });
});

describe('broken XML', () => {
  it('cut short anywhere, keeps the whole points before the cut and says so', async () => {
    const content = file('plain');
    const text = new TextDecoder().decode(content);
    for (let length = 300; length < content.length - 7; length += 13) {
      const whole = text.slice(0, length).split('</trkpt>').length - 1;
      const { tracks, problems } = await read(content.subarray(0, length));
      expect(tracks[0]?.length ?? 0).toBe(whole);
      expect(problems.some((p) => /^error: line \d+: The file ends before the recording does/.test(p))).toBe(
        true,
      );
    }
  });

  it('with crossed tags goes on, and says where', async () => {
    const { tracks, problems } = await read(file('crossed-tags'));
    expect([...tracks[0].lat]).toEqual([10, 10.1]);
    expect(problems).toEqual([
      'error: line 4: A closing tag is not that of the element last opened. ' +
        'The elements left open were taken to end here. Check the points near this line.',
    ]);
  });

  it('with a stray closing tag stops there, and keeps what came before', async () => {
    const { tracks, problems } = await read(file('stray-tag'));
    expect([...tracks[0].lat]).toEqual([10, 10.1, 10.2]);
    expect(problems).toContain(
      'error: line 6: A closing tag belongs to no open element. Reading stopped here; everything before it is kept.',
    );
  });

  it('with text around the recording passes over it', async () => {
    const { tracks, problems } = await read(`junk\n<?xml version="1.0"?>${TWO_POINTS}\nmore junk`);
    expect(tracks[0].length).toBe(2);
    expect(problems).toEqual([
      'warning: line 2: Something stands before the first element. It was passed over.',
      'warning: line 2: The XML declaration is not at the start, or is incomplete. It was passed over.',
      'warning: line 3: Something stands after the end of the recording. It was passed over.',
    ]);
  });

  it('with NUL bytes, as after a loss of power, reads the rest', async () => {
    const { tracks, problems } = await read(`${TWO_POINTS.replace('>T<', '>T\0\0<')}${'\0'.repeat(100_000)}`);
    expect(tracks[0]).toMatchObject({ name: 'T', length: 2 });
    expect(problems[0]).toMatch(/^warning: line 1: NUL characters stand in the file/);
    expect(problems).toHaveLength(1);
  });

  it('of two files in one reads both', async () => {
    const { tracks, problems } = await read(TWO_POINTS + TWO_POINTS);
    expect(tracks.map((track) => track.length)).toEqual([2, 2]);
    expect(problems[0]).toMatch(/A second recording follows/);
  });
});

describe('values', () => {
  it('that are missing or impossible are told from each other', async () => {
    const { tracks, problems } = await read(file('bad-values'));
    expect([...tracks[0].lat]).toEqual([10, 10.2, 10.3, 10.4, 10.5, 10.6, 10.7, 10.8, 10.8]);
    expect([...tracks[0].elevationM]).toEqual([5, NaN, NaN, NaN, NaN, NaN, NaN, 7, 9]);
    expect(tracks[0].timeS[4] - tracks[0].timeS[0]).toBe(50);
    expect(tracks[0].timeS[5] - tracks[0].timeS[0]).toBe(60.5);
    expect(problems).toEqual([
      'error: line 4, <trkpt>: A point has no latitude or no longitude, or not as a number. The point was left out. (3 times, first here)',
      'error: line 6, <trkpt>: A point has a latitude beyond 90 or a longitude beyond 180 degrees. The point was left out. (2 times, first here)',
      'warning: line 9, <ele>: An elevation is not a number. Taken as unknown. (3 times, first here)',
      'warning: line 10, <trkpt>: The time runs backwards. The points stay in the order of the file; times there mean little.',
      'warning: line 11, <time>: A time is not a date and time. Taken as unknown.',
      'warning: line 12, <time>: A time has no zone. Taken as UTC.',
      'warning: line 12, <trkpt>: A point has no elevation. The slope is unknown where too few points have one. (2 times, first here)',
      'warning: line 14, <ele>: An elevation is below -500 m or above the highest mountain. Taken as unknown.',
      'warning: line 15, <ele>: A point has two elevations. The first was taken.',
      'warning: line 16, <trkpt>: A point repeats the one before it in everything. The repeat was left out. (2 times, first here)',
    ]);
  });

  it('of a point before the next belong to that point alone', async () => {
    const { tracks } = await read(points(point(1, 7), '<trkpt lat="2" lon="20"/>', point(3, 9)));
    expect([...tracks[0].elevationM]).toEqual([7, NaN, 9]);
  });

  it('of version and creator are missed', async () => {
    const { problems } = await read(TWO_POINTS.replace(ROOT, '<gpx>'));
    expect(problems).toEqual([
      'warning: line 1, <gpx>: The GPX version is not stated. Read as GPX 1.1.',
      'warning: line 1, <gpx>: The program that wrote the file (creator) is not stated. Read without it.',
    ]);
    expect((await read(TWO_POINTS.replace('"1.1"', '"7.7.5-play"'))).problems[0]).toMatch(
      /version is "7.7.5-play"/,
    );
  });

  it('a single point is kept, an empty track is not', async () => {
    const { tracks, problems } = await read(
      points(point(10)).replace('</gpx>', '<trk><name>E</name></trk></gpx>'),
    );
    expect(tracks.map(({ name, length }) => [name, length])).toEqual([['T', 1]]);
    expect(problems).toEqual([
      'warning: line 1, <trk>: A track or route has only one point. Kept, but it has no length and no slope.',
      'warning: line 1, <trk>: A track or route has no usable point. It was left out.',
    ]);
  });
});

describe('limits', () => {
  it.each([
    ['points', { points: 3 }, /more than 3 points/],
    ['tracks', { tracks: 0 }, /more than 0 tracks and routes/],
    ['size', { decodedBytes: 700 }, /larger than 0 MB/],
  ])('of %s stop the reading with a message', async (_, limits, message) => {
    const content = points(...Array.from({ length: 100 }, (_, i) => point(i / 10)));
    const { problems } = await read(content, { limits });
    expect(problems[0]).toMatch(message);
  });

  it('of depth hold against 200,000 nested elements', async () => {
    const nested = `${points(point(10), point(11)).replace('</gpx>', '')}${'<a>'.repeat(200_000)}`;
    const { tracks, problems } = await read(nested);
    expect(tracks[0].length).toBe(2);
    expect(problems[0]).toMatch(/^error: line 1: Elements stand inside one another more than 100 deep/);
  });

  it.each([
    ['a value', `<name>${'x'.repeat(10_000_000)}`],
    ['a comment', `<!-- ${'x'.repeat(10_000_000)}`],
    ['an attribute', `<trk a="${'x'.repeat(10_000_000)}`],
    ['a tag', `<trk ${'a="" '.repeat(2_000_000)}`],
  ])('of length hold against %s without end', async (_, tail) => {
    const { tracks, problems } = await read(TWO_POINTS.replace('</gpx>', tail));
    expect(tracks[0].length).toBe(2);
    expect(problems[0]).toMatch(
      /^error: line 1: A single value, tag or comment is longer than 8,388,608 characters/,
    );
  });

  it('of violations hold against what is no XML at all', async () => {
    const { problems } = await read(`${ROOT}${'<1<2<3'.repeat(10_000)}`);
    expect(problems[0]).toMatch(/Not well-formed XML/);
    expect(problems.some((p) => /breaks the rules of XML in more than 10,000 places/.test(p))).toBe(true);
  });
});

async function* inPieces(content: Uint8Array, size: number): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < content.length; at += size)
    yield await Promise.resolve(content.subarray(at, at + size));
}
